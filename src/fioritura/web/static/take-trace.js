/** The pitch of a take, drawn over the engraved line that was to be played. */

import { svgEl, svgOf } from "./dom.js";
import { say } from "./words.js";

/**
 * @typedef {import("../types.d.ts").TraceNote} TraceNote @typedef {import("../types.d.ts").TakeLine} TakeLine
 * @typedef {{label: string, status: string}} Labelled
 */

const CENTS_A_STEP = 25;
const MOST_CENTS = 120;
/** By so much a note may come early and still stand in its bar. */
const EARLY_TICKS = 210;
/** A cross, a tick and a plus, in a box of −10 to 10. */
const SIGNS = /** @type {Record<string, string>} */ ({ done: "M-7 0L-2 6L8 -7", missed: "M-6 -6L6 6M6 -6L-6 6", added: "M0 -8V8M-8 0H8" });

/** The sign of what became of a figure. @param {string} status */
export function statusSign(status) {
  return svgEl("svg", { class: `status-sign status-${status}`, viewBox: "-10 -10 20 20", "aria-hidden": "true" }, svgEl("path", { d: SIGNS[status] }));
}

/** Draws a take's line with its trace; `chosen` is told of a played note that is pointed at. */
export class Trace {
  /** @param {HTMLElement} place @param {(note: TraceNote) => void} chosen */
  constructor(place, chosen) {
    this.place = place;
    this.chosen = chosen;
    /** @type {{note: TraceNote, path: SVGElement}[]} */
    this.drawn = [];
    /** @type {SVGElement | null} */
    this.now = null;
  }

  get widthMm() {
    return Math.max(60, Math.min(600, Math.floor((this.place.clientWidth * 25.4) / 96 / 2) * 2));
  }

  /** @param {TakeLine} line @param {Labelled[]} figures */
  draw(line, figures) {
    this.drawn = [];
    this.now = null;
    const holders = line.systems.map((system) => {
      const svg = svgOf(system.svg), holder = document.createElement("div");
      const first = line.bar_numbers[system.first], last = line.bar_numbers[system.first + system.bars - 1];
      svg.style.width = `${Math.min(100, (parseFloat(svg.getAttribute("width") ?? "0") / this.widthMm) * 100)}%`;
      svg.removeAttribute("width");
      svg.removeAttribute("height");
      svg.setAttribute("role", "img");
      svg.setAttribute("aria-label", say("page-bars-from-to", { first, last }));
      holder.className = "system";
      holder.append(svg);
      return holder;
    });
    this.place.replaceChildren(...holders);
    const heads = headsOf(line);
    const bottom = bottomStep(heads);
    for (const [number, system] of line.systems.entries()) this.#drawSystem(line, system, holders[number], heads, bottom);
    for (const [number, figure] of figures.entries()) dressLabel(number, figure);
  }

  /** Mark the note that sounds at a time of the recording; null for none. @param {number | null} sec */
  mark(sec) {
    const found = sec === null ? undefined : this.drawn.find(({ note }) => note.onset_sec <= sec && sec < note.end_sec);
    if (found?.path === this.now) return;
    this.now?.classList.remove("now");
    this.now = found?.path ?? null;
    this.now?.classList.add("now");
  }

  /**
   * @param {TakeLine} line @param {import("../types.d.ts").SystemView} system @param {HTMLElement} holder @param {Head[]} heads
   * @param {number} bottom
   */
  #drawSystem(line, system, holder, heads, bottom) {
    const home = holder.querySelector("g.system"), staff = holder.querySelector("g.staff");
    const lines = staff ? staffLines(staff) : [];
    if (!home || lines.length < 5) return;
    const last = system.first + system.bars - 1;
    const from = system.first ? line.ends_ticks[system.first - 1] : -Infinity;
    const to = last === line.ends_ticks.length - 1 ? Infinity : line.ends_ticks[last];
    const rail = railOf(line, system, holder, heads.filter((head) => head.system === home));
    if (rail.length < 2) return;
    const stepHeight = (lines[4] - lines[0]) / 8, layer = svgEl("g", { class: "trace" });
    for (const note of line.trace) {
      const inside = note.start_ticks + Math.min(EARLY_TICKS, (note.end_ticks - note.start_ticks) / 2);
      if (inside < from || inside >= to) continue;
      const zero = lines[4] - (note.step - bottom) * stepHeight;
      const left = along(rail, note.start_ticks), right = Math.max(left + 20, along(rail, Math.min(note.end_ticks, line.ends_ticks[last])) - 25);
      const d = course(note.contour, left, right, zero, stepHeight);
      const path = svgEl("path", { class: `kind-${note.kind}`, d });
      const hit = svgEl("path", { class: "hit", d, click: () => this.chosen(note) }, titled(note));
      layer.append(path, hit);
      this.drawn.push({ note, path });
    }
    home.append(layer);
  }
}

/** @typedef {{system: Element, ticks: number, step: number, x: number, y: number}} Head */

/** The printed note heads. @param {TakeLine} line @returns {Head[]} */
function headsOf(line) {
  const found = [];
  for (const note of line.notes) {
    const head = document.getElementById(note.element)?.querySelector(".notehead"), system = head?.closest("g.system");
    if (!(head instanceof SVGGraphicsElement) || !system) continue;
    const box = head.getBBox();
    found.push({ system, ticks: note.onset_ticks, step: note.step, x: box.x + box.width / 2, y: box.y + box.height / 2 });
  }
  return found;
}

/** The staff place of the bottom line, as one note head tells it. @param {Head[]} heads */
function bottomStep(heads) {
  for (const head of heads) {
    const staff = [...head.system.querySelectorAll("g.staff")].find((one) => staffLines(one).length >= 5);
    if (!staff) continue;
    const lines = staffLines(staff);
    return head.step - Math.round((lines[4] - head.y) / ((lines[4] - lines[0]) / 8));
  }
  return 30;
}

/** The heights of a staff's lines, from top to bottom. @param {Element} staff */
function staffLines(staff) {
  return [...staff.children].filter((child) => child.tagName === "path").slice(0, 5)
    .map((path) => parseFloat(/M\S+ (\S+)/.exec(path.getAttribute("d") ?? "")?.[1] ?? "NaN"));
}

/**
 * Where time lies on a system: pairs of ticks and x, both growing.
 * @param {TakeLine} line @param {import("../types.d.ts").SystemView} system @param {HTMLElement} holder @param {Head[]} heads
 * @returns {[number, number][]}
 */
function railOf(line, system, holder, heads) {
  const last = system.first + system.bars - 1;
  const measure = [...holder.querySelectorAll("g.measure")].at(-1);
  const rail = heads.map((head) => /** @type {[number, number]} */ ([head.ticks, head.x]));
  if (measure instanceof SVGGraphicsElement) {
    const box = measure.getBBox();
    rail.push([line.ends_ticks[last], box.x + box.width - 60]);
  }
  rail.sort((one, two) => one[0] - two[0]);
  return rail.filter((pair, index) => index === 0 || (pair[0] > rail[index - 1][0] && pair[1] > rail[index - 1][1]));
}

/** @param {[number, number][]} rail @param {number} ticks */
function along(rail, ticks) {
  let next = rail.findIndex((pair) => pair[0] >= ticks);
  if (next < 0) next = rail.length - 1;
  next = Math.max(1, next);
  const [before, after] = [rail[next - 1], rail[next]];
  const x = before[1] + ((ticks - before[0]) * (after[1] - before[1])) / (after[0] - before[0]);
  return Math.max(rail[0][1] - 250, Math.min(rail[rail.length - 1][1], x));
}

/** The course of a note without the glides that lead into and out of it. @param {number[]} contour @param {number} left @param {number} right @param {number} zero @param {number} stepHeight */
function course(contour, left, right, zero, stepHeight) {
  const isNear = (/** @type {number} */ cents) => Math.abs(cents) <= MOST_CENTS;
  const heard = contour.slice(Math.max(0, contour.findIndex(isNear)), contour.findLastIndex(isNear) + 1);
  const points = heard.length > 1 ? heard : [heard[0] ?? 0, heard[0] ?? 0];
  return points.map((cents, index) => {
    const x = left + ((right - left) * index) / (points.length - 1);
    const y = zero - (Math.max(-MOST_CENTS, Math.min(MOST_CENTS, cents)) / CENTS_A_STEP) * stepHeight;
    return `${index ? "L" : "M"}${x.toFixed(0)} ${y.toFixed(0)}`;
  }).join("");
}

/** @param {TraceNote} note */
function titled(note) {
  const title = svgEl("title", {});
  const middle = note.contour.slice().sort((a, b) => a - b)[note.contour.length >> 1] ?? 0;
  title.textContent = say("page-report-note", { note: note.name, cents: `${middle > 0 ? "+" : ""}${middle}` });
  return title;
}

/** Show by sign and colour what became of a figure. @param {number} number @param {Labelled} figure */
function dressLabel(number, figure) {
  const label = document.getElementById(`s1-l${number}`), text = label?.querySelector("text");
  if (!label || !text) return;
  label.classList.add("figure-label", `status-${figure.status}`);
  const size = parseFloat(text.querySelector("tspan")?.getAttribute("font-size") ?? "350"), scale = size / 34;
  const x = parseFloat(text.getAttribute("x") ?? "0"), y = parseFloat(text.getAttribute("y") ?? "0");
  label.append(svgEl("g", { class: `status-sign status-${figure.status}`, transform: `translate(${x + 8 * scale} ${y - size * 0.3}) scale(${scale})` }, svgEl("path", { d: SIGNS[figure.status] })));
  text.setAttribute("x", String(x + 22 * scale));
}
