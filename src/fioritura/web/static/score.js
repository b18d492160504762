/** The music on the page: systems, figures to be chosen, bars to be looped, and the marker that follows the sound. */

import { svgEl, svgOf } from "./dom.js";
import { shapePath } from "./families.js";
import { say } from "./words.js";

/** @typedef {import("../types.d.ts").ArrangementView} ArrangementView @typedef {import("../types.d.ts").FigureView} FigureView */

const PAD = 110;
const DRAG_PIXELS = 8;
const LOCK = "M-7 -1h14v10h-14ZM-5 -1v-3a5 5 0 0 1 10 0v3h-2.4v-3a2.6 2.6 0 0 0 -5.2 0v3Z";

/**
 * @typedef {{x: number, y: number, width: number, height: number}} Box
 * @typedef {{figure: FigureView, isOwn: boolean, elements: SVGGElement[], boxes: [Element, Box][], label: Element | null,
 *   labelWidth: number}} Measured
 */

/** Draws an arrangement and tells what is pointed at: `figure(id)`, `bars(first, last)`, `bar(index)`. */
export class Score {
  /**
   * @param {HTMLElement} place
   * @param {{figure: (id: string) => void, bars: (first: number, last: number) => void, bar: (index: number) => void}} told
   */
  constructor(place, told) {
    this.place = place;
    this.told = told;
    /** @type {Map<string, string>} element id to figure id */
    this.owners = new Map();
    /** @type {Map<string, SVGGElement>} */
    this.groups = new Map();
    /** @type {SVGGElement[]} */
    this.measures = [];
    /** @type {Element[]} */
    this.marked = [];
    /** @type {[number, number] | null} */
    this.range = null;
    this.#listen();
  }

  /** Width for the music in millimetres. */
  get widthMm() {
    return Math.max(60, Math.min(600, Math.floor((this.place.clientWidth * 25.4) / 96 / 2) * 2));
  }

  /** @param {ArrangementView} view @param {number} widthMm */
  draw(view, widthMm) {
    const systems = view.systems.map((system, number) => {
      const svg = svgOf(system.svg);
      const first = view.bar_numbers[system.first], last = view.bar_numbers[system.first + system.bars - 1];
      svg.style.width = `${Math.min(100, (parseFloat(svg.getAttribute("width") ?? "0") / widthMm) * 100)}%`;
      svg.removeAttribute("width");
      svg.removeAttribute("height");
      svg.setAttribute("role", "group");
      svg.setAttribute("aria-label", say("page-bars-from-to", { first, last }));
      const holder = document.createElement("div");
      holder.className = "system";
      holder.dataset.number = String(number);
      holder.append(svg);
      return holder;
    });
    this.place.replaceChildren(...systems);
    this.measures = [...this.place.querySelectorAll("g.measure")].map((g) => /** @type {SVGGElement} */ (g));
    this.owners.clear();
    this.groups.clear();
    this.marked = [];
    const measured = [
      ...view.figures.map((figure) => this.#measured(figure, 2)),
      ...view.other.map((figure) => this.#measured(figure, 3)),
    ];
    for (const each of measured) if (each) this.#drawFigure(each);
    this.#reachable(view.figures[0]?.id);
    if (this.range) this.showRange(this.range);
  }

  /**
   * Where a figure lies. All are measured before any is drawn, so that the page is laid out once.
   * @param {FigureView} figure @param {number} staff @returns {Measured | null}
   */
  #measured(figure, staff) {
    const elements = figure.elements.flatMap((id) => this.#pieces(id));
    if (!elements.length) return null;
    const label = document.getElementById(`s${staff}-l${figure.number}`);
    const text = label?.querySelector("text");
    const boxes = grouped(elements).map(([system, members]) => /** @type {[Element, Box]} */ ([system, boxOf(members)]));
    return { figure, isOwn: staff === 2, elements, boxes, label, labelWidth: figure.is_kept && text ? text.getBBox().width : 0 };
  }

  /** @param {Measured} measured */
  #drawFigure({ figure, isOwn, elements, boxes, label, labelWidth }) {
    const group = svgEl("g", { class: `fig fam-${figure.family}`, "data-figure": isOwn ? figure.id : null });
    if (isOwn) {
      group.setAttribute("role", "button");
      group.setAttribute("tabindex", "-1");
      group.setAttribute("aria-pressed", "false");
      group.setAttribute("aria-label", say(figure.is_kept ? "page-figure-place-kept" : "page-figure-place", { name: figure.name, where: figure.where }));
      for (const element of elements) this.owners.set(element.id, figure.id);
      this.groups.set(figure.id, group);
    }
    for (const [number, [system, box]] of boxes.entries()) {
      const at = { x: box.x - PAD, y: box.y - PAD, width: box.width + 2 * PAD, height: box.height + 2 * PAD, rx: 90 };
      const home = number ? svgEl("g", { class: `fig fam-${figure.family}` }) : group;
      home.append(svgEl("rect", { class: "wash", ...at }), svgEl("rect", { class: "edge", ...at }));
      layerOf(system).append(home);
    }
    if (label) this.#dressLabel(figure, label, group, isOwn, labelWidth);
  }

  /** @param {FigureView} figure @param {Element} label @param {SVGGElement} group @param {boolean} isOwn @param {number} width */
  #dressLabel(figure, label, group, isOwn, width) {
    label.classList.add("fig-label", `fam-${figure.family}`);
    const text = label.querySelector("text");
    if (!text) return;
    const size = parseFloat(text.querySelector("tspan")?.getAttribute("font-size") ?? "350");
    const x = parseFloat(text.getAttribute("x") ?? "0"), y = parseFloat(text.getAttribute("y") ?? "0");
    const scale = size / 34;
    const shape = svgEl("g", { class: "shape", transform: `translate(${x + 8 * scale} ${y - size * 0.3}) scale(${scale})` }, shapePath(figure.family));
    text.setAttribute("x", String(x + 22 * scale));
    group.append(shape);
    if (isOwn) {
      label.setAttribute("data-owner", figure.id);
      label.setAttribute("aria-hidden", "true");
    }
    if (figure.is_kept) {
      label.classList.add("kept");
      const end = x + 22 * scale + 1.06 * width + 70;
      group.append(svgEl("path", { class: "lock", transform: `translate(${end} ${y - size * 0.3}) scale(${scale * 0.85})`, d: LOCK }));
    }
  }

  /** A note's group, and those of the notes it is tied to. @param {string} id @returns {SVGGElement[]} */
  #pieces(id) {
    const found = [];
    for (let piece = 1; ; piece++) {
      const element = document.getElementById(piece === 1 ? id : `${id}-${piece}`);
      if (!element) return found;
      found.push(/** @type {SVGGElement} */ (/** @type {unknown} */ (element)));
    }
  }

  /** Let the keyboard reach one figure; arrows lead on from there. @param {string | undefined} id */
  #reachable(id) {
    for (const [name, group] of this.groups) group.setAttribute("tabindex", name === id ? "0" : "-1");
  }

  /** @param {string | null} id @param {boolean} [focus] */
  select(id, focus = false) {
    for (const [name, group] of this.groups) group.setAttribute("aria-pressed", String(name === id));
    if (!id) return;
    this.#reachable(id);
    const group = this.groups.get(id);
    if (!group) return;
    if (focus) group.focus({ preventScroll: true });
    group.closest(".system")?.scrollIntoView({ block: "nearest" });
  }

  /** Mark the note that sounds. @param {string | null} id */
  mark(id) {
    const now = id ? this.#pieces(id) : [];
    if (now[0] === this.marked[0] && now.length === this.marked.length) return;
    for (const element of this.marked) element.classList.remove("sounding");
    for (const element of now) element.classList.add("sounding");
    const system = now[0]?.closest(".system");
    if (system && system !== this.marked[0]?.closest(".system")) keepInView(system);
    this.marked = now;
  }

  /** Show the bars of a loop. @param {[number, number] | null} range */
  showRange(range) {
    this.range = range;
    for (const wash of this.place.querySelectorAll(".bar-wash")) wash.remove();
    if (!range) return;
    for (let bar = range[0]; bar <= range[1]; bar++) {
      const measure = this.measures[bar];
      const system = measure && systemOf(measure);
      if (!system) continue;
      const box = measure.getBBox();
      const lines = staffSpan(measure);
      layerOf(system).prepend(svgEl("rect", { class: "bar-wash", x: lines[0], width: lines[1] - lines[0], y: box.y - 40, height: box.height + 80 }));
    }
  }

  #listen() {
    /** @type {{bar: number, x: number, y: number, moved: boolean} | null} */
    let drag = null;
    this.place.addEventListener("click", (event) => {
      const id = this.#figureAt(event.target);
      if (id && !drag?.moved) this.told.figure(id);
    });
    this.place.addEventListener("keydown", (event) => {
      if (event.key !== "Enter") return;
      const id = this.#figureAt(event.target);
      if (id) this.told.figure(id);
    });
    this.place.addEventListener("pointerdown", (event) => {
      const bar = this.#barAt(event.clientX, event.clientY);
      drag = bar === null || event.button ? null : { bar, x: event.clientX, y: event.clientY, moved: false };
    });
    this.place.addEventListener("pointermove", (event) => {
      if (!drag || !(event.buttons & 1)) return;
      if (!drag.moved && Math.hypot(event.clientX - drag.x, event.clientY - drag.y) < DRAG_PIXELS) return;
      drag.moved = true;
      const bar = this.#barAt(event.clientX, event.clientY);
      if (bar !== null) this.showRange([Math.min(drag.bar, bar), Math.max(drag.bar, bar)]);
    });
    this.place.addEventListener("pointerup", (event) => {
      if (!drag) return;
      if (drag.moved && this.range) this.told.bars(...this.range);
      else if (!this.#figureAt(event.target)) this.told.bar(drag.bar);
    });
  }

  /** @param {EventTarget | null} target @returns {string | null} */
  #figureAt(target) {
    if (!(target instanceof Element)) return null;
    const group = target.closest("[data-figure], [data-owner]");
    if (group instanceof SVGElement || group instanceof HTMLElement) return group.dataset.figure ?? group.dataset.owner ?? null;
    const note = target.closest("g.note");
    return note ? this.owners.get(note.id) ?? null : null;
  }

  /** @param {number} x @param {number} y @returns {number | null} */
  #barAt(x, y) {
    const found = this.measures.findIndex((measure) => {
      const box = measure.getBoundingClientRect();
      return x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
    });
    return found < 0 ? null : found;
  }
}

/** What lies behind the notes of a system, in reading order. @param {Element} system */
function layerOf(system) {
  const first = system.firstElementChild;
  if (first?.classList.contains("figures")) return first;
  const layer = svgEl("g", { class: "figures" });
  system.prepend(layer);
  return layer;
}

/** @param {Element} element */
function systemOf(element) {
  return element.closest("g.system");
}

/** Elements by the system they stand on. @param {SVGGElement[]} elements @returns {[Element, SVGGElement[]][]} */
function grouped(elements) {
  /** @type {Map<Element, SVGGElement[]>} */
  const groups = new Map();
  for (const element of elements) {
    const system = systemOf(element);
    if (system) groups.set(system, [...(groups.get(system) ?? []), element]);
  }
  return [...groups];
}

/** @param {SVGGElement[]} elements */
function boxOf(elements) {
  const boxes = elements.map((element) => element.getBBox());
  const x = Math.min(...boxes.map((box) => box.x)), y = Math.min(...boxes.map((box) => box.y));
  const right = Math.max(...boxes.map((box) => box.x + box.width)), bottom = Math.max(...boxes.map((box) => box.y + box.height));
  return { x, y, width: right - x, height: bottom - y };
}

/** Left and right end of a bar's staff lines. @param {SVGGElement} measure @returns {[number, number]} */
function staffSpan(measure) {
  const found = /M([\d.-]+) [\d.-]+ ?L([\d.-]+)/.exec(measure.querySelector("g.staff > path")?.getAttribute("d") ?? "");
  const box = measure.getBBox();
  return found ? [parseFloat(found[1]), parseFloat(found[2])] : [box.x, box.x + box.width];
}

/** @param {Element} element */
function keepInView(element) {
  const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
  element.scrollIntoView({ block: "center", behavior: calm ? "auto" : "smooth" });
}
