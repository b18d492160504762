/** The form of the setting: for whom and how the tune is arranged. */

import { byId } from "./dom.js";
import { shapePath } from "./families.js";
import { say } from "./words.js";

/** @typedef {import("../types.d.ts").SettingView} SettingView */

/** Shows a setting, and tells of each change. */
export class SettingForm {
  /** @param {(changed: Partial<SettingView>) => void} changed */
  constructor(changed) {
    this.form = byId("setting", HTMLFormElement);
    for (const icon of this.form.querySelectorAll("[data-shape]")) icon.append(shapePath(icon.getAttribute("data-shape") ?? ""));
    this.form.addEventListener("submit", (event) => event.preventDefault());
    this.form.addEventListener("input", () => this.#densityWords());
    this.form.addEventListener("change", () => {
      if (this.form.reportValidity()) changed(this.wanted);
    });
  }

  /** @param {SettingView} setting */
  show(setting) {
    for (const [name, value] of Object.entries(setting)) {
      const field = this.form.elements.namedItem(name);
      if (field instanceof RadioNodeList || field instanceof HTMLSelectElement || field instanceof HTMLInputElement) field.value = String(value);
    }
    this.#densityWords();
    for (const box of this.#families) box.checked = !setting.without.includes(box.value);
    for (const box of this.#techniques) {
      box.disabled = setting.without.includes(box.dataset.family ?? "");
      box.checked = !box.disabled && !setting.without.includes(box.value);
    }
  }

  /** @returns {Partial<SettingView>} */
  get wanted() {
    const data = new FormData(this.form);
    return {
      player: String(data.get("player")),
      level: Number(data.get("level")),
      idiom: String(data.get("idiom")),
      feel: String(data.get("feel")),
      tempo: Number(data.get("tempo")),
      density: Number(data.get("density")),
      without: this.#without,
    };
  }

  #densityWords() {
    const density = Number(new FormData(this.form).get("density"));
    byId("density-words", HTMLOutputElement).textContent = say(density === 1 ? "page-density-usual" : density < 1 ? "page-density-fewer" : "page-density-more", { share: Math.round(100 * density) });
  }

  /** Choose a level. @param {number} level */
  setLevel(level) {
    const field = this.form.elements.namedItem("level");
    if (!(field instanceof RadioNodeList) || field.value === String(level)) return;
    field.value = String(level);
    this.form.dispatchEvent(new Event("change"));
  }

  /** The level and player in words. */
  get words() {
    const player = byId("setting", HTMLFormElement).querySelector("select");
    return say("page-stand-setting", { player: player?.selectedOptions[0]?.textContent ?? "", level: this.wanted.level ?? 0, idiom: this.wanted.idiom ?? "" });
  }

  /** Kinds that are not wanted, and single techniques of the others. */
  get #without() {
    const families = this.#families.filter((box) => !box.checked).map((box) => box.value);
    const single = this.#techniques.filter((box) => !box.checked && !box.disabled && !families.includes(box.dataset.family ?? ""));
    return [...families, ...single.map((box) => box.value)];
  }

  get #techniques() {
    return /** @type {HTMLInputElement[]} */ ([...this.form.querySelectorAll("input[name=technique]")]);
  }

  get #families() {
    return /** @type {HTMLInputElement[]} */ ([...this.form.querySelectorAll("input[name=family]")]);
  }
}
