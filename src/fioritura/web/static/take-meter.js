/** The level of the microphone as a bar, and what to do about it in words. */

import { byId } from "./dom.js";
import { say } from "./words.js";

/** @typedef {import("./take-microphone.js").Level} Level */

const FLOOR_DB = -60;
const SOFT_DB = -34;
const HOT_DB = -3;
const FALL_DB = 1.2;
const HOLD_MS = 2500;

/** Shows levels as they come. */
export class Meter {
  constructor() {
    this.bar = byId("meter-bar", HTMLElement);
    this.mark = byId("meter-peak", HTMLElement);
    this.meter = byId("meter", HTMLElement);
    this.words = byId("level-words", HTMLElement);
    this.shown = FLOOR_DB;
    this.loudest = FLOOR_DB;
    this.clippedAt = -Infinity;
    this.heardAt = -Infinity;
    /** How many blocks lay flat at full scale since the last reset. */
    this.clips = 0;
  }

  /** Forget what was loud. */
  reset() {
    this.loudest = FLOOR_DB;
    this.clips = 0;
    this.clippedAt = -Infinity;
    this.heardAt = performance.now();
  }

  /** @param {Level} level */
  show(level) {
    const db = Math.max(FLOOR_DB, 20 * Math.log10(level.peak + 1e-9)), now = performance.now();
    this.shown = Math.max(db, this.shown - FALL_DB);
    this.loudest = Math.max(this.loudest, db);
    if (level.clipped) {
      this.clips += 1;
      this.clippedAt = now;
    }
    if (db > SOFT_DB) this.heardAt = now;
    this.bar.style.width = `${share(this.shown)}%`;
    this.mark.style.left = `${share(this.loudest)}%`;
    const state = this.#state(now), words = say("page-meter-words", { state });
    this.meter.setAttribute("aria-valuenow", this.shown.toFixed(0));
    this.meter.setAttribute("aria-valuetext", say("page-meter-spoken", { level: Math.round(this.shown), state }));
    this.meter.dataset.state = state === "clips" ? "hot" : state;
    if (this.words.textContent !== words) this.words.textContent = words;
  }

  /** @param {number} now */
  #state(now) {
    if (now - this.clippedAt < HOLD_MS) return "clips";
    if (this.shown > HOT_DB) return "hot";
    return now - this.heardAt < HOLD_MS ? "good" : "soft";
  }
}

/** @param {number} db */
function share(db) {
  return Math.round(100 * (1 - db / FLOOR_DB));
}
