/** The report on a take: what was heard, what to practise, and whether to keep it. */

import { ask, query } from "./api.js";
import { announce, byId, el, svgEl } from "./dom.js";
import { familyName, shapeIcon } from "./families.js";
import { followJob } from "./jobs.js";
import { Along } from "./take-along.js";
import { statusSign, Trace } from "./take-trace.js";
import { moment, say } from "./words.js";

/**
 * @typedef {import("../types.d.ts").Report} Report @typedef {import("../types.d.ts").FigureResult} FigureResult @typedef {import("../types.d.ts").Tendency} Tendency
 * @typedef {import("../types.d.ts").AdviceView} AdviceView @typedef {import("../types.d.ts").TakeView} TakeView @typedef {import("../types.d.ts").TakeSummary} TakeSummary
 */

const main = byId("main", HTMLElement), id = main.dataset.take ?? "";
const music = byId("music", HTMLElement), audio = byId("audio", HTMLAudioElement);
const FAR_CENTS = 12;
const FAR_MS = 20;
const MOST_NOTES = 10;
const KINDS = /** @type {const} */ (["right", "figure", "wrong", "added"]);

const trace = new Trace(music, (note) => playFrom(note.onset_sec));

/** @type {TakeView | null} */
let take = null;
/** @type {Along | null} */
let along = null;
let passage = 1;

async function show() {
  take = await ask(`takes/${id}`);
  const { report, facts } = /** @type {TakeView} */ (take);
  const day = moment(/** @type {TakeView} */ (take).taken_at, "long");
  byId("about", HTMLElement).textContent = [
    say("page-take-line", { line: facts.line }), say("page-report-asked-at", { tempo: Math.round(facts.tempo) }), day, lasting(facts.seconds),
  ].join(" · ");
  const praise = byId("praise", HTMLElement);
  praise.replaceChildren(el("strong", {}, report.headline), report.praise === report.headline ? "" : ` ${report.praise}`);
  praise.setAttribute("aria-busy", "false");
  const remarks = report.key_words ? [say("page-report-key", { where: report.key_words }), ...report.remarks] : report.remarks;
  byId("remarks", HTMLElement).replaceChildren(...remarks.map((words) => el("li", {}, words)));
  byId("advice", HTMLElement).replaceChildren(...report.advice.map(advised));
  showFigures(report);
  showTime(report);
  showPitch(report);
  showPassages(report);
  if (facts.is_with_band && take?.arrangement) {
    along = new Along(take, alongChanged);
    byId("along", HTMLElement).hidden = false;
  }
  await drawLine();
}

/** @param {AdviceView} one */
function advised(one) {
  return el("li", {}, el("h3", {}, one.title), el("p", {}, one.finding), el("p", { class: "practice" }, one.practice));
}

// The line

async function drawLine() {
  if (!take) return;
  music.setAttribute("aria-busy", "true");
  const staff = innerWidth < 560 ? 6 : 7.5;
  try {
    trace.draw(await ask(`takes/${id}/line${query({ width: trace.widthMm, staff, passage })}`), take.report.figures);
    const kinds = [...new Set(take.report.passages[passage - 1].map((note) => note.kind))];
    const statuses = [...new Set(take.report.figures.filter((row) => row.passage === passage).map((row) => row.status))];
    byId("legend", HTMLElement).replaceChildren(
      ...KINDS.filter((kind) => kinds.includes(kind)).map((kind) => el("li", {}, sample(kind), say("page-report-note-kind", { kind }))),
      ...statuses.map((status) => el("li", {}, /** @type {any} */ (statusSign(status)), say("page-report-ornament-status", { status }))));
  } catch (error) {
    music.replaceChildren(el("p", { class: "wrong" }, error instanceof Error ? error.message : String(error)));
  }
  music.setAttribute("aria-busy", "false");
}

/** @param {string} kind @returns {any} */
function sample(kind) {
  return svgEl("svg", { class: `sample kind-${kind}`, viewBox: "0 0 32 12", "aria-hidden": "true" }, svgEl("path", { d: "M2 8C8 2 12 10 18 6S26 5 30 6" }));
}

/** @param {Report} report */
function showPassages(report) {
  const list = byId("passages", HTMLSelectElement), count = report.passages.length;
  list.replaceChildren(...report.passages.map((_, index) => el("option", { value: index + 1 }, say("page-share-of", { count: index + 1, total: count }))));
  byId("passages-label", HTMLElement).hidden = count < 2;
}

/** @param {number} sec */
function playFrom(sec) {
  along?.stop();
  audio.currentTime = Math.max(0, sec - 0.05);
  void audio.play();
}

// Ornaments

/** @param {Report} report */
function showFigures(report) {
  const { figures, slips } = report, table = byId("figures", HTMLTableElement);
  if (!figures.length) table.replaceChildren(el("caption", {}, say("page-report-no-ornaments")));
  else {
    const asked = figures.filter((row) => row.status !== "added").length, done = figures.filter((row) => row.status === "done").length;
    const added = figures.length - asked;
    const words = [asked ? say("page-report-came-out", { count: done, total: asked }) : "", added ? say("page-ornaments-added", { count: added }) : ""].filter(Boolean).join(", ");
    table.replaceChildren(
      el("caption", {}, words),
      el("thead", {}, el("tr", {}, ...[say("page-report-where"), say("page-ornament"), say("page-report-outcome"), say("page-report-sure"), ""].map((head, index) => el("th", { scope: "col", class: index === 3 ? "number" : null }, head || el("span", { class: "hidden" }, say("page-hear")))))),
      el("tbody", {}, ...figures.map((row) => figureRow(report, row))));
  }
  byId("slips-title", HTMLElement).hidden = !slips.length;
  byId("slips", HTMLElement).replaceChildren(...slips.map((slip) => el("li", {}, say("page-report-slip", { where: slip.where, what: slip.words }))));
}

/** @param {Report} report @param {FigureResult} row */
function figureRow(report, row) {
  const sec = secondOf(report, row);
  return el("tr", {},
    el("td", {}, row.where),
    el("td", {}, el("span", { class: "row" }, /** @type {any} */ (shapeIcon(row.family)), el("span", { title: familyName(row.family) }, row.name))),
    el("td", {}, el("span", { class: "row" }, /** @type {any} */ (statusSign(row.status)), say("page-report-status", { status: row.status }))),
    el("td", { class: "number" }, row.status === "missed" ? "" : say("page-percent", { share: Math.round(100 * row.confidence) })),
    el("td", {}, sec === null ? null : el("button", { type: "button", "aria-label": say("page-report-hear", { name: row.name, where: row.where }), click: () => playFrom(sec) }, `▶\uFE0E ${say("page-hear")}`)));
}

/** When a figure was played, a beat before it. @param {Report} report @param {FigureResult} row */
function secondOf(report, row) {
  const notes = report.passages[row.passage - 1] ?? [];
  const near = notes.find((note) => note.start_ticks >= row.onset_ticks - 420);
  return near ? Math.max(0, near.onset_sec - 60 / report.timing.tempo) : null;
}

// Time and pitch

/** @param {Report} report */
function showTime({ timing }) {
  const rows = [[say("page-tempo"), say("page-report-tempo", { tempo: Math.round(timing.tempo) })], [say("page-report-drift"), drift(timing.drift_percent)],
    [say("page-report-spread"), say("page-report-spread-within", { ms: Math.round(timing.spread_ms) })],
    [say("page-eighth-notes"), timing.swing_ratio < 1.05 ? say("page-report-even") : say("page-report-swing", { ratio: timing.swing_ratio })]];
  if (timing.behind_band_ms !== null) rows.push([say("page-report-behind-band"), offset(timing.behind_band_ms)]);
  if (timing.grace_ms !== null) rows.push([say("page-report-graces"), say("page-milliseconds", { ms: Math.round(timing.grace_ms) })]);
  byId("time", HTMLElement).replaceChildren(...defined(rows));
  byId("beats", HTMLElement).replaceChildren(...timing.beats.map((row) => tendency(row, FAR_MS, 60, (ms) => offset(ms))));
}

/** @param {Report} report */
function showPitch(report) {
  const cents = report.tuning_cents;
  byId("pitch", HTMLElement).replaceChildren(...defined([
    [say("page-report-your-a"), say("page-report-tuning", { hertz: Math.round(440 * 2 ** (cents / 1200)), cents: signed(cents) })],
    [say("page-report-melody"), say("page-report-right", { count: report.right, total: report.notes })],
    [say("page-report-soft-loud"), say("page-report-decibels", { range: Math.round(report.level_range_db) })]]));
  const rows = [...report.by_register, ...report.by_note.slice(0, MOST_NOTES)];
  byId("tuning", HTMLElement).replaceChildren(...rows.map((row) => tendency(row, FAR_CENTS, 40, (value) => say("page-report-cents", { cents: signed(value) }))));
}

/** @param {string[][]} rows */
function defined(rows) {
  return rows.flatMap(([name, value]) => [el("dt", {}, name), el("dd", {}, value)]);
}

/** One row: a name, a bar to either side of the middle, and the value. @param {Tendency} row @param {number} far @param {number} most @param {(value: number) => string} words */
function tendency(row, far, most, words) {
  const reach = Math.max(-1, Math.min(1, row.value / most)) * 48;
  const isFar = Math.abs(row.value) >= far;
  const svg = svgEl("svg", { viewBox: "-50 0 100 10", preserveAspectRatio: "none", "aria-hidden": "true", class: isFar ? "far" : "" },
    svgEl("line", { x1: 0, x2: 0, y1: 0, y2: 10, "vector-effect": "non-scaling-stroke" }), svgEl("rect", { x: Math.min(0, reach), y: 2.5, width: Math.max(0.6, Math.abs(reach)), height: 5 }));
  return el("p", { class: "tendency" }, el("span", {}, row.name), /** @type {any} */ (svg), el("b", {}, words(row.value)));
}

/** @param {number} value */
function signed(value) {
  const whole = Math.round(value);
  return whole > 0 ? `+${whole}` : whole < 0 ? `−${-whole}` : "0";
}

/** @param {number} ms */
function offset(ms) {
  const whole = Math.round(Math.abs(ms));
  return say(whole < 3 ? "page-report-on-beat" : ms > 0 ? "page-report-late" : "page-report-early", { ms: whole });
}

/** @param {number} percent */
function drift(percent) {
  const whole = Math.round(Math.abs(percent));
  return say(whole < 1 ? "page-report-steady" : percent > 0 ? "page-report-faster" : "page-report-slower", { percent: whole });
}

/** @param {number} seconds */
function lasting(seconds) {
  const whole = Math.round(seconds);
  return say(whole < 60 ? "page-report-seconds" : "page-report-minutes", { minutes: Math.floor(whole / 60), seconds: whole % 60 });
}

// Keep or discard

async function keep() {
  const student = byId("student", HTMLSelectElement).value;
  try {
    /** @type {TakeSummary} */
    const kept = await ask(`takes/${id}`, { method: "PUT", json: { student: student ? Number(student) : null } });
    byId("keep", HTMLElement).hidden = true;
    byId("kept", HTMLElement).hidden = false;
    const whose = byId("whose", HTMLAnchorElement);
    whose.href = `/students/${kept.student_id ?? 0}`;
    whose.textContent = kept.student ? say("page-takes-all-of", { student: kept.student }) : say("page-takes-of-nobody");
    announce(kept.student ? say("page-report-kept-of", { student: kept.student }) : say("page-report-kept-now"));
  } catch (error) {
    announce(error instanceof Error ? error.message : String(error));
  }
}

async function print() {
  const button = byId("print", HTMLButtonElement), words = byId("print-words", HTMLElement), link = byId("printed", HTMLAnchorElement);
  button.disabled = true;
  words.textContent = say("page-report-printing");
  try {
    /** @type {import("../types.d.ts").JobView} */
    const started = await ask(`takes/${id}/print`, { method: "POST" });
    const done = await followJob(started.id, () => {});
    link.href = done.file;
    link.hidden = !done.file;
    button.hidden = done.file !== "";
    words.textContent = "";
    link.focus();
  } catch (error) {
    words.textContent = error instanceof Error ? error.message : String(error);
  }
  button.disabled = false;
}

const discarding = byId("discarding", HTMLDialogElement);
byId("print", HTMLElement).addEventListener("click", () => void print());
byId("keep", HTMLElement).addEventListener("click", () => void keep());
byId("student", HTMLElement).addEventListener("change", () => { if (take?.is_kept || byId("keep", HTMLElement).hidden) void keep(); });
byId("discard", HTMLElement).addEventListener("click", () => { discarding.returnValue = ""; discarding.showModal(); });
discarding.addEventListener("close", async () => {
  if (discarding.returnValue !== "ok") return;
  try {
    await ask(`takes/${id}`, { method: "DELETE" });
    location.assign(main.dataset.arrangement ? `/take/${main.dataset.arrangement}` : "/students");
  } catch (error) {
    announce(error instanceof Error ? error.message : String(error));
  }
});
byId("passages", HTMLSelectElement).addEventListener("change", (event) => {
  passage = Number(/** @type {HTMLSelectElement} */ (event.target).value);
  void drawLine();
});

function follow() {
  const isAlong = along?.isPlaying ?? false;
  trace.mark(isAlong ? along?.position ?? null : audio.paused ? null : audio.currentTime);
  if (isAlong || !audio.paused) requestAnimationFrame(follow);
}

function alongChanged() {
  const button = byId("along", HTMLButtonElement), isPlaying = along?.isPlaying ?? false;
  button.setAttribute("aria-pressed", String(isPlaying));
  button.textContent = isPlaying ? say("page-stop") : say("page-report-along");
  follow();
}

byId("along", HTMLButtonElement).addEventListener("click", async () => {
  audio.pause();
  byId("along", HTMLButtonElement).textContent = say("page-wait");
  try {
    await along?.toggle();
  } catch (error) {
    announce(error instanceof Error ? error.message : String(error));
    alongChanged();
  }
});
audio.addEventListener("play", () => { if (along?.isPlaying) along.stop(); });
for (const kind of ["play", "pause", "ended"]) audio.addEventListener(kind, follow);

let width = 0, settling = 0;
new ResizeObserver(() => {
  if (trace.widthMm === width) return;
  const isFirst = width === 0;
  width = trace.widthMm;
  clearTimeout(settling);
  if (!isFirst) settling = window.setTimeout(() => void drawLine(), 200);
}).observe(music);

show().catch((error) => { byId("praise", HTMLElement).textContent = error instanceof Error ? error.message : String(error); });
