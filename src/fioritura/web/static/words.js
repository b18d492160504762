/** The page's words: messages of its language, which the server takes apart, with their arguments filled in. */

/**
 * @typedef {string | {arg: string, format?: Intl.NumberFormatOptions} | {by: string, cases: Record<string, Piece[]>, usual: string}} Piece
 * @typedef {Record<string, string | number>} Args
 */

/** The language of the page, as browsers name it. */
export const language = document.documentElement.lang;

/** @type {Record<string, Piece[]>} */
const messages = JSON.parse(document.getElementById("words")?.textContent ?? "{}");

/**
 * A message with its arguments filled in.
 * @param {string} id @param {Args} [args]
 */
export function say(id, args = {}) {
  if (!(id in messages)) throw new Error(`The page has no words for ${id}.`);
  return filled(messages[id], args, language);
}

/**
 * Pieces put together as a language writes them: numbers in its digits, cases by what is given or by its plurals.
 * @param {Piece[]} pieces @param {Args} args @param {string} tag @returns {string}
 */
export function filled(pieces, args, tag) {
  return pieces.map((piece) => {
    if (typeof piece === "string") return piece;
    if ("by" in piece) return filled(piece.cases[caseOf(piece, args, tag)], args, tag);
    const value = args[piece.arg];
    return typeof value === "number" ? new Intl.NumberFormat(tag, piece.format).format(value) : String(value);
  }).join("");
}

/** @param {{by: string, cases: Record<string, Piece[]>, usual: string}} choice @param {Args} args @param {string} tag */
function caseOf({ by, cases, usual }, args, tag) {
  const value = args[by];
  if (String(value) in cases) return String(value);
  const plural = typeof value === "number" ? new Intl.PluralRules(tag).select(value) : usual;
  return plural in cases ? plural : usual;
}

/** A date and time in words. @param {string} at as ISO 8601 @param {"medium" | "long"} [style] */
export function moment(at, style = "medium") {
  return new Date(at).toLocaleString(language, { dateStyle: style, timeStyle: "short" });
}
