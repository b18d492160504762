/** The panel about one figure: what it is and why, what could stand there instead, and what to do with it. */

import { ask, askSound, query } from "./api.js";
import { announce, el, svgOf } from "./dom.js";
import { familyName, shapeIcon } from "./families.js";
import { say } from "./words.js";

/** @typedef {import("../types.d.ts").FigureView} FigureView @typedef {import("../types.d.ts").AlternativeView} AlternativeView */
/**
 * @typedef {Pick<import("../types.d.ts").Decision, "kind" | "figure"> & Partial<import("../types.d.ts").Decision>} Wish
 * @typedef {{decide: (wish: Wish) => void, hear: (sound: Promise<ArrayBuffer>) => void}} Hands
 */

const DIFFICULTIES = ["easy", "moderate", "demanding", "hard"];
const WELL = 0.75, FAIRLY = 1.5, POORLY = 3;

/** Shows a figure in a place; `hands` do what is asked for. */
export class FigurePanel {
  /** @param {HTMLElement} place @param {number} arrangement @param {Hands} hands */
  constructor(place, arrangement, hands) {
    this.place = place;
    this.arrangement = arrangement;
    this.hands = hands;
    /** @type {AbortController | null} */
    this.asking = null;
    /** @type {FigureView | null} */
    this.figure = null;
  }

  /** @param {FigureView | null} figure */
  show(figure) {
    this.asking?.abort();
    this.figure = figure;
    if (!figure) {
      this.place.replaceChildren(el("p", { class: "muted" }, say("page-figure-none")));
      return;
    }
    const list = el("div", { "aria-busy": "true" }, el("p", { class: "muted" }, say("page-figure-looking")));
    this.place.replaceChildren(...this.#head(figure), ...this.#bends(figure), el("h3", {}, say("page-figure-alternatives")), list);
    void this.#fill(figure, list);
  }

  /** @param {FigureView} figure */
  #head(figure) {
    return [
      el("div", { class: `figure-head fam-${figure.family}` }, shapeIcon(figure.family), el("h2", {}, figure.name)),
      el("p", { class: "where" }, say("page-figure-where", { family: familyName(figure.family), where: figure.where })),
      el("p", { class: "reason" }, figure.reason),
      el("div", { class: "row" },
        el("button", { type: "button", id: "keep", "aria-pressed": String(figure.is_kept), click: () => this.keep() }, figure.is_kept ? say("page-figure-kept") : say("page-figure-keep")),
        el("button", { type: "button", id: "leave-out", click: () => this.leaveOut() }, say("page-figure-leave-out")),
        el("button", { type: "button", id: "hear-figure", click: () => this.hear() }, say("page-figure-hear"))),
      el("dl", { class: `facts fam-${figure.family}` },
        el("dt", {}, say("page-level")), el("dd", {}, String(figure.level)),
        el("dt", {}, say("page-figure-difficulty")), el("dd", {}, ...difficulty(figure.difficulty)),
        el("dt", {}, say("page-technique-text")), el("dd", {}, figure.text),
        el("dt", {}, say("page-technique-how")), el("dd", {}, figure.how)),
    ];
  }

  /** @param {FigureView} figure */
  #bends(figure) {
    if (!figure.added.length) return [];
    const notes = figure.added.map((added) => {
      const bend = (/** @type {"lower" | "raise"} */ kind) => () => this.hands.decide({ kind, figure: figure.id, note: added.note });
      return el("div", { class: "bend", role: "group", "aria-label": say("page-figure-added-note", { note: added.written }) },
        el("button", { type: "button", "aria-label": say("page-figure-lower", { note: added.written }), click: bend("lower") }, "▾"),
        el("b", {}, added.written),
        el("button", { type: "button", "aria-label": say("page-figure-raise", { note: added.written }), click: bend("raise") }, "▴"));
    });
    return [el("h3", {}, say("page-figure-notes")), el("div", { class: "bends" }, ...notes)];
  }

  /** @param {FigureView} figure @param {HTMLElement} list */
  async #fill(figure, list) {
    this.asking = new AbortController();
    const path = `arrangements/${this.arrangement}/alternatives${query({ figure: figure.id })}`;
    try {
      /** @type {AlternativeView[]} */
      const found = await ask(path, { signal: this.asking.signal });
      const best = Math.max(...found.map((one) => one.worth));
      list.replaceChildren(...found.map((one) => this.#card(figure, one, best)));
    } catch (error) {
      if (error instanceof DOMException) return;
      list.replaceChildren(el("p", { class: "wrong" }, error instanceof Error ? error.message : String(error)));
    }
    list.setAttribute("aria-busy", "false");
  }

  /** @param {FigureView} figure @param {AlternativeView} one @param {number} best */
  #card(figure, one, best) {
    const svg = svgOf(one.svg);
    svg.setAttribute("role", "img");
    svg.setAttribute("aria-label", say("page-figure-on-staff", { name: one.name }));
    const isThis = one.id === figure.id;
    return el("article", { class: `alternative fam-${one.family}${isThis ? " stands" : ""}` },
      el("h4", {}, shapeIcon(one.family), one.name, el("span", { class: "fit" }, fit(best - one.worth))),
      svg,
      el("p", {}, one.reason),
      el("div", { class: "row" },
        el("button", { type: "button", "aria-label": say("page-figure-hear-name", { name: one.name }), click: () => this.#hear(one.id) }, `▶\uFE0E ${say("page-hear")}`),
        isThis ? el("span", { class: "muted" }, say("page-figure-stands"))
          : el("button", { type: "button", class: "take", "aria-label": say("page-figure-take-name", { name: one.name }), click: () => this.hands.decide({ kind: "replace", figure: figure.id, other: one.id }) }, say("page-figure-take"))));
  }

  keep() {
    if (this.figure) this.hands.decide({ kind: this.figure.is_kept ? "release" : "keep", figure: this.figure.id });
  }

  leaveOut() {
    if (this.figure) this.hands.decide({ kind: "leave-out", figure: this.figure.id });
  }

  hear() {
    if (this.figure) this.#hear(this.figure.id);
  }

  /** Go to the first alternative. */
  toAlternatives() {
    const first = this.place.querySelector("button.take");
    if (first instanceof HTMLElement) first.focus();
    else announce(say("page-figure-no-other"));
  }

  /** @param {string} id */
  #hear(id) {
    this.hands.hear(askSound(`arrangements/${this.arrangement}/figure-sound${query({ figure: id })}`));
  }
}

/** How well a figure fits, by how far the whole falls behind the best with it. @param {number} behind */
function fit(behind) {
  return say("page-figure-fit", { fit: behind < WELL ? "best" : behind < FAIRLY ? "well" : behind < POORLY ? "fairly" : "less" });
}

/** @param {number} value */
function difficulty(value) {
  const filled = Math.max(1, Math.min(5, Math.ceil(value * 5)));
  const words = say("page-difficulty-name", { difficulty: DIFFICULTIES[Math.min(3, Math.floor(value * 4))] });
  return [el("span", { class: "difficulty", "aria-hidden": "true" }, "●".repeat(filled) + "○".repeat(5 - filled)), ` ${words}`];
}
