/** The keyboard: one table of keys, from which the help is drawn. Single letters can be turned off. */

import { byId, el } from "./dom.js";
import { say } from "./words.js";

/** @typedef {{keys: string[], shown?: string, words: string, act: () => void}} Key */

/** True when what has the focus was reached with the pointer: the space bar is then free to play. */
let byPointer = false;

const STORED = "fioritura-letters";

/** Listen for keys. @param {Key[]} table */
export function listenForKeys(table) {
  const dialog = byId("keys", HTMLDialogElement);
  const letters = byId("letters", HTMLInputElement);
  letters.checked = localStorage.getItem(STORED) !== "off";
  letters.addEventListener("change", () => localStorage.setItem(STORED, letters.checked ? "on" : "off"));
  /** @type {Key} */
  const help = { keys: ["?"], words: say("page-key-help"), act: () => dialog.showModal() };
  byId("help", HTMLButtonElement).addEventListener("click", help.act);
  const all = [...table, help];
  byId("key-list", HTMLElement).replaceChildren(
    ...all.filter((key) => key.shown || key === help).flatMap((key) => [el("dt", {}, ...keyCaps(key)), el("dd", {}, key.words)]),
  );
  document.addEventListener("pointerdown", () => { byPointer = true; });
  document.addEventListener("keydown", (event) => {
    if (event.key === "Tab") byPointer = false;
    const name = nameOf(event);
    const key = all.find((one) => one.keys.includes(name));
    if (!key || dialog.open || isTaken(event.target, name)) return;
    if (name.length === 1 && name !== " " && !letters.checked) return;
    event.preventDefault();
    if (name === " " && event.target instanceof HTMLElement) event.target.blur();
    key.act();
  });
}

/** @param {Key} key */
function keyCaps(key) {
  return (key.shown ?? key.keys[0]).split(" ").flatMap((cap, index) => [index ? " " : "", el("kbd", {}, cap)]);
}

/** @param {KeyboardEvent} event */
function nameOf(event) {
  const name = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  if (event.altKey) return `Alt+${name}`;
  return event.ctrlKey || event.metaKey ? `Ctrl+${event.shiftKey ? "Shift+" : ""}${name}` : name;
}

/** True where the element itself needs the key. @param {EventTarget | null} target @param {string} name */
function isTaken(target, name) {
  if (!(target instanceof Element)) return false;
  if (target.closest("textarea, select, input:not([type=range], [type=radio], [type=checkbox])")) return true;
  if (name === " ") return target.closest("button, input, summary, a") !== null && !byPointer;
  if (name.startsWith("Arrow")) return target.closest("input, [role=tab], aside") !== null;
  return false;
}
