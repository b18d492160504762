/** The form of a lesson's plan. */

import { byId, el, svgOf } from "./dom.js";
import { shapeIcon } from "./families.js";
import { say } from "./words.js";

/**
 * @typedef {import("../types.d.ts").Plan} Plan @typedef {import("../types.d.ts").OfferView} Offer @typedef {import("../types.d.ts").PhraseView} PhraseView
 * @typedef {import("../types.d.ts").TechniqueOffer} TechniqueOffer
 */

const FIELDS = /** @type {const} */ ([
  ["name", say("page-technique-name")], ["label", say("page-technique-label")], ["text", say("page-technique-text")], ["how", say("page-technique-how")],
  ["when", say("page-technique-when")], ["fault", say("page-technique-fault")], ["cure", say("page-technique-cure")],
]);

/** Shows a plan and an offer; tells when the plan was changed, and when another offer is needed. */
export class PlanForm {
  /** @param {Plan} plan @param {{changed: () => void, offer: () => void}} told */
  constructor(plan, told) {
    this.form = byId("plan", HTMLFormElement);
    this.plan = plan;
    this.told = told;
    /** @type {Offer | null} */
    this.offer = null;
    this.form.addEventListener("submit", (event) => event.preventDefault());
    this.form.addEventListener("input", (event) => this.#read(event.target));
    for (const [id, on] of /** @type {const} */ ([["players-all", true], ["players-none", false]])) {
      byId(id, HTMLButtonElement).addEventListener("click", () => {
        for (const box of this.#boxes("players")) box.checked = on;
        this.#set({ players: this.#checked("players") });
      });
    }
    this.show(plan);
  }

  /** @param {Plan} plan */
  show(plan) {
    this.plan = plan;
    for (const name of /** @type {const} */ (["paper", "language", "note_names", "audio"])) {
      const field = this.form.elements.namedItem(name);
      if (field instanceof RadioNodeList || field instanceof HTMLSelectElement) field.value = plan[name] ?? "";
    }
    for (const name of /** @type {const} */ (["players", "sections"])) {
      for (const box of this.#boxes(name)) box.checked = plan[name].includes(box.value);
    }
    for (const field of this.form.querySelectorAll("[data-word]")) {
      if (field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement) field.value = plan.overrides.words[field.dataset.word ?? ""] ?? "";
    }
    if (this.offer) this.showOffer(this.offer);
  }

  /** @param {Offer} offer */
  showOffer(offer) {
    this.offer = offer;
    const level = this.form.elements.namedItem("level");
    if (level instanceof RadioNodeList) level.value = String(this.plan.level ?? offer.level);
    const place = byId("phrases", HTMLElement);
    place.setAttribute("aria-busy", "false");
    place.replaceChildren(...offer.phrases.map((phrase) => this.#phrase(phrase)));
    const open = new Set([...this.form.querySelectorAll(".technique details[open]")].map((one) => one.closest(".technique")?.getAttribute("data-technique")));
    const isFirst = (/** @type {TechniqueOffer} */ one) => one.used > 0 || (this.plan.techniques ?? []).includes(one.id);
    const more = offer.techniques.filter((one) => !isFirst(one));
    byId("techniques", HTMLElement).replaceChildren(...offer.techniques.filter(isFirst).map((one) => this.#technique(one, open.has(one.id))));
    byId("more-techniques", HTMLElement).replaceChildren(...more.map((one) => this.#technique(one, open.has(one.id))));
    byId("more-count", HTMLElement).textContent = `(${more.length})`;
    byId("more", HTMLElement).hidden = !more.length;
  }

  /** Choose a level. @param {number} level */
  setLevel(level) {
    const field = this.form.elements.namedItem("level");
    if (!(field instanceof RadioNodeList) || field.value === String(level)) return;
    field.value = String(level);
    this.#set({ level });
    this.told.offer();
  }

  /** @param {PhraseView} phrase */
  #phrase(phrase) {
    const isChosen = this.#phrases.includes(phrase.number);
    const bars = say(phrase.first_bar === 0 ? "page-bars-pickup" : "page-bars-span", { first: phrase.first_bar, last: phrase.last_bar });
    const words = say(phrase.returns ? "page-lesson-phrase-returns" : "page-lesson-phrase-new", { count: phrase.figures });
    const staves = phrase.svgs.map((text) => svgOf(text));
    for (const svg of staves) svg.setAttribute("aria-hidden", "true");
    return el("label", { class: `phrase${isChosen ? " chosen" : ""}` },
      el("span", { class: "check" }, el("input", { type: "checkbox", name: "phrases", value: phrase.number, checked: isChosen }), bars, " ", el("small", { class: "muted" }, words)),
      el("span", { class: "staves" }, .../** @type {any[]} */ (staves)));
  }

  /** @param {TechniqueOffer} one @param {boolean} isOpen */
  #technique(one, isOpen) {
    const isEdited = Object.keys(this.plan.overrides.techniques[one.id] ?? {}).length > 0;
    const box = el("div", { class: "own" });
    const details = el("details", { open: isOpen, toggle: () => { if (details.open && !box.childElementCount) this.#fill(box, one); } },
      el("summary", { "aria-label": say("page-lesson-words-on", { name: one.name }) }, say("page-lesson-words")), box);
    if (isOpen) this.#fill(box, one);
    return el("div", { class: `technique fam-${one.family}${isEdited ? " edited" : ""}`, "data-technique": one.id },
      el("div", { class: "technique-line" }, shapeIcon(one.family),
        el("label", { class: "check" }, el("input", { type: "checkbox", name: "techniques", value: one.id, checked: this.#techniques.includes(one.id) }), one.name),
        el("span", { class: "uses" }, say("page-lesson-technique-use", { level: one.level, count: one.used }))),
      details);
  }

  /** The words of a technique, to be changed. @param {HTMLElement} box @param {TechniqueOffer} one */
  #fill(box, one) {
    const own = this.plan.overrides.techniques[one.id] ?? {};
    const fields = FIELDS.map(([field, title]) => el("label", {}, title,
      el("textarea", { "data-technique": one.id, "data-field": field, maxlength: 4000, rows: ["name", "label"].includes(field) ? 1 : 2 }, own[field] ?? one.texts[field])));
    const back = el("button", { type: "button", click: () => {
      const { [one.id]: _, ...techniques } = this.plan.overrides.techniques;
      this.#set({ overrides: { ...this.plan.overrides, techniques } });
      box.replaceChildren();
      this.#fill(box, one);
      box.closest(".technique")?.classList.remove("edited");
    } }, say("page-lesson-words-back"));
    box.replaceChildren(...fields, el("div", { class: "row" }, back));
  }

  get #techniques() {
    return this.plan.techniques ?? (this.offer?.techniques ?? []).filter((one) => one.used > 0).map((one) => one.id);
  }

  get #phrases() {
    return this.plan.phrases ?? (this.offer?.phrases ?? []).map((one) => one.number);
  }

  /** @param {string} name */
  #boxes(name) {
    return /** @type {HTMLInputElement[]} */ ([...this.form.querySelectorAll(`input[name=${name}]`)]);
  }

  /** @param {string} name */
  #checked(name) {
    return this.#boxes(name).filter((box) => box.checked).map((box) => box.value);
  }

  /** @param {Partial<Plan>} values */
  #set(values) {
    this.plan = { ...this.plan, ...values };
    this.told.changed();
  }

  /** Take in what was changed. @param {EventTarget | null} field */
  #read(field) {
    if (!(field instanceof HTMLInputElement || field instanceof HTMLSelectElement || field instanceof HTMLTextAreaElement)) return;
    const { word, technique, field: text } = field.dataset;
    const { overrides } = this.plan;
    if (word) this.#set({ overrides: { ...overrides, words: withText(overrides.words, word, field.value, "") } });
    else if (technique && text) {
      const usual = this.offer?.techniques.find((one) => one.id === technique)?.texts[text] ?? "";
      const own = withText(overrides.techniques[technique] ?? {}, text, field.value, usual);
      const { [technique]: _, ...rest } = overrides.techniques;
      field.closest(".technique")?.classList.toggle("edited", Object.keys(own).length > 0);
      this.#set({ overrides: { ...overrides, techniques: Object.keys(own).length ? { ...rest, [technique]: own } : rest } });
    } else if (field.name === "phrases") {
      field.closest(".phrase")?.classList.toggle("chosen", /** @type {HTMLInputElement} */ (field).checked);
      const chosen = this.#checked("phrases").map(Number);
      this.#set({ phrases: chosen.length === this.offer?.phrases.length ? null : chosen });
    } else if (field.name === "techniques") this.#set({ techniques: this.#checked("techniques") });
    else if (field.name === "sections" || field.name === "players") this.#set({ [field.name]: this.#checked(field.name) });
    else if (field.name === "level") this.#set({ level: Number(field.value) });
    else this.#set({ [field.name]: field.value || null });
    if (field.name === "level" || field.name === "language") this.told.offer();
  }
}

/** Texts with one more, or without it where it is empty or as usual. @param {Record<string, string>} texts @param {string} name @param {string} text @param {string} usual */
function withText(texts, name, text, usual) {
  const { [name]: _, ...rest } = texts;
  return text.trim() && text !== usual ? { ...rest, [name]: text } : rest;
}
