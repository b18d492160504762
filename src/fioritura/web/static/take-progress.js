/** A student's takes over time: three small charts, and the same figures in a table. */

import { ask, query } from "./api.js";
import { announce, byId, el, svgEl } from "./dom.js";
import { language, moment, say } from "./words.js";

/** @typedef {import("../types.d.ts").TakeSummary} TakeSummary */
/**
 * @typedef {{title: string, words: string, unit: "cents" | "ms" | "percent", value: (take: TakeSummary) => number | null, most: (values: number[]) => number,
 *   goal: [number, number], better: 1 | -1}} Measure
 */

const WIDTH = 320, HEIGHT = 150, LEFT = 34, RIGHT = 8, TOP = 10, BOTTOM = 24;
const student = Number(byId("main", HTMLElement).dataset.student), list = byId("tune", HTMLSelectElement);

/** @type {Measure[]} */
const MEASURES = [
  { title: say("page-measure-pitch"), words: say("page-progress-pitch-about"), unit: "cents", goal: [0, 10], better: -1,
    value: (take) => take.facts.pitch_cents, most: (values) => Math.max(30, ...values) },
  { title: say("page-measure-timing"), words: say("page-progress-timing-about"), unit: "ms", goal: [0, 35], better: -1,
    value: (take) => take.facts.spread_ms, most: (values) => Math.max(70, ...values) },
  { title: say("page-measure-ornaments"), words: say("page-progress-ornaments-about"), unit: "percent", goal: [80, 100], better: 1,
    value: (take) => (take.facts.asked ? (100 * take.facts.done) / take.facts.asked : null), most: () => 100 },
];

/** @type {TakeSummary[]} */
let takes = [];

async function load() {
  /** @type {TakeSummary[]} */
  const found = await ask(`takes${query({ student: student || null })}`);
  takes = student ? found : found.filter((take) => take.student_id === null);
  const tunes = new Map(takes.map((take) => [take.tune_id, take.tune]));
  list.append(...[...tunes].map(([id, name]) => el("option", { value: id }, name)));
  show();
}

function show() {
  const shown = takes.filter((take) => !list.value || take.tune_id === Number(list.value));
  const kept = shown.filter((take) => take.is_kept).reverse();
  byId("none", HTMLElement).hidden = shown.length > 0;
  byId("charts", HTMLElement).replaceChildren(...(kept.length ? MEASURES.map((measure) => chart(measure, kept)) : []));
  byId("charts", HTMLElement).setAttribute("aria-busy", "false");
  byId("takes", HTMLTableElement).replaceChildren(
    el("thead", {}, el("tr", {}, ...[say("page-progress-when"), say("page-tune"), say("page-progress-line"), say("page-tempo"), say("page-measure-pitch"), say("page-measure-timing"), say("page-measure-ornaments"), say("page-progress-right")].map((head, index) => el("th", { scope: "col", class: index > 2 ? "number" : null }, head)))),
    el("tbody", {}, ...shown.map(row)));
}

/** @param {TakeSummary} take */
function row(take) {
  const { facts } = take;
  const day = moment(take.taken_at);
  const cells = [`${Math.round(facts.tempo)}`, say("page-progress-cents", { cents: facts.pitch_cents }), say("page-milliseconds", { ms: Math.round(facts.spread_ms) }),
    facts.asked ? say("page-share-of", { count: facts.done, total: facts.asked }) : facts.added ? say("page-ornaments-added", { count: facts.added }) : say("page-progress-none-asked"),
    say("page-share-of", { count: facts.right, total: facts.notes })];
  return el("tr", {},
    el("td", {}, el("a", { href: `/takes/${take.id}` }, el("time", { datetime: take.taken_at }, day)), take.is_kept ? null : el("span", { class: "waits" }, ` · ${say("page-progress-keep")}`)),
    el("td", {}, take.tune), el("td", {}, say("page-line-name", { line: facts.line })), ...cells.map((words) => el("td", { class: "number" }, words)));
}

/** @param {Measure} measure @param {TakeSummary[]} kept */
function chart(measure, kept) {
  const points = kept.map((take) => ({ take, value: measure.value(take) })).filter((point) => point.value !== null);
  const values = points.map((point) => Number(point.value));
  const title = el("h2", {}, measure.title);
  if (!values.length) return el("section", { class: "card chart" }, title, el("p", {}, say("page-progress-no-ornament")));
  const most = measure.most(values);
  const x = (/** @type {number} */ index) => (values.length === 1 ? (LEFT + WIDTH - RIGHT) / 2 : LEFT + 8 + ((WIDTH - LEFT - RIGHT - 16) * index) / (values.length - 1));
  const y = (/** @type {number} */ value) => HEIGHT - BOTTOM - ((HEIGHT - TOP - BOTTOM) * Math.min(value, most)) / most;
  const svg = svgEl("svg", { viewBox: `0 0 ${WIDTH} ${HEIGHT}`, role: "img", "aria-label": told(measure, values) });
  svg.append(svgEl("rect", { class: "goal", x: LEFT, width: WIDTH - LEFT - RIGHT, y: y(measure.goal[1]), height: y(measure.goal[0]) - y(measure.goal[1]) }));
  for (const value of [0, most / 2, most]) {
    svg.append(svgEl("line", { class: "grid", x1: LEFT, x2: WIDTH - RIGHT, y1: y(value), y2: y(value) }), text(Math.round(value), LEFT - 6, y(value) + 4, "end"));
  }
  svg.append(svgEl("path", { class: "course", d: values.map((value, index) => `${index ? "L" : "M"}${x(index).toFixed(1)} ${y(value).toFixed(1)}`).join("") }));
  for (const [index, { take, value }] of points.entries()) {
    const point = svgEl("circle", { class: `point ${take.facts.line}`, cx: x(index), cy: y(Number(value)), r: 4 }, svgEl("title", {}));
    /** @type {Element} */ (point.firstElementChild).textContent = say("page-progress-point", { tune: take.tune, day: short(take), value: Math.round(Number(value)), unit: measure.unit });
    svg.append(point);
  }
  svg.append(text(short(points[0].take), LEFT, HEIGHT - 6, "start"));
  if (points.length > 1) svg.append(text(short(points[points.length - 1].take), WIDTH - RIGHT, HEIGHT - 6, "end"));
  return el("section", { class: "card chart" }, title, /** @type {any} */ (svg), el("p", {}, measure.words));
}

/** The chart in words. @param {Measure} measure @param {number[]} values */
function told(measure, values) {
  const first = values[0], last = values[values.length - 1], change = (last - first) * measure.better;
  const course = values.length < 2 ? "none" : Math.abs(change) < 1 ? "same" : change > 0 ? "better" : "worse";
  return say("page-progress-chart", { measure: measure.title, value: Math.round(last), unit: measure.unit, count: values.length, course, first: Math.round(first) });
}

/** @param {TakeSummary} take */
function short(take) {
  return new Date(take.taken_at).toLocaleDateString(language, { day: "numeric", month: "short" });
}

/** @param {string | number} words @param {number} x @param {number} y @param {string} anchor */
function text(words, x, y, anchor) {
  const made = svgEl("text", { x, y, "text-anchor": anchor });
  made.textContent = String(words);
  return made;
}

list.addEventListener("change", show);
load().catch((error) => announce(error.message));
