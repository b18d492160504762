/** The row of controls under the music: what is heard, which bars, how fast, and with whom. */

import { ask, query } from "./api.js";
import { announce, byId, el } from "./dom.js";
import { Player } from "./player.js";
import { say } from "./words.js";

/** @typedef {import("../types.d.ts").HearingView} HearingView @typedef {import("../types.d.ts").ArrangementView} ArrangementView */

/** @type {Record<string, string[]>} */
const LINES = { plain: ["plain"], ornamented: ["ornamented"], "in-turn": ["plain", "ornamented"], other: ["other"], both: ["ornamented", "other"] };
const PARTS = ["melody", "bass", "chords", "drums", "click"];
/** @type {Record<string, number>} */
const USUAL = { melody: 1, bass: 0.8, chords: 0.8, drums: 0.8, click: 0 };
const FEELS = ["swing", "shuffle", "slow-blues", "ballad", "bossa", "soul", "funk", "waltz", "folk-waltz", "march", "reel", "jig"];
const PATIENCE_MS = 350;

/** Controls and sound of an arrangement over a score. */
export class Transport {
  /** @param {number} arrangement @param {import("./score.js").Score} score */
  constructor(arrangement, score) {
    this.arrangement = arrangement;
    this.score = score;
    this.player = new Player(() => this.#shown());
    /** @type {HearingView | null} */
    this.hearing = null;
    /** @type {Promise<void>} */
    this.ready = Promise.resolve();
    /** @type {[number, number] | null} */
    this.loop = null;
    /** @type {number | null} */
    this.seed = null;
    this.startBar = 0;
    this.timer = 0;
    this.frame = 0;
    this.asked = 0;
    this.tempo = 0;
    this.arrangedFor = 0;
    this.#build();
  }

  #build() {
    const feel = byId("band-feel", HTMLSelectElement);
    for (const name of FEELS) feel.append(el("option", { value: name }, say("page-feel-name", { feel: name })));
    feel.addEventListener("change", () => this.refresh(0));
    for (const part of PARTS) {
      const words = el("output", {});
      const fader = el("input", { type: "range", id: `fader-${part}`, min: 0, max: 100, step: 1 });
      const set = () => {
        words.textContent = fader.value === "0" ? say("page-off") : fader.value;
        this.player.setLevel(part, (Number(fader.value) / 100) ** 2);
      };
      fader.value = String(100 * USUAL[part]);
      fader.addEventListener("input", set);
      set();
      byId("faders", HTMLElement).append(el("label", { class: "fader" }, say("page-part-name", { part }), fader, words));
    }
    const mixerButton = byId("mixer-button", HTMLButtonElement), mixer = byId("mixer", HTMLElement);
    mixerButton.addEventListener("click", () => {
      mixer.hidden = !mixer.hidden;
      mixerButton.setAttribute("aria-expanded", String(!mixer.hidden));
    });
    byId("play", HTMLButtonElement).addEventListener("click", () => this.toggle());
    byId("what", HTMLElement).addEventListener("change", () => this.#whatChanged());
    byId("loop", HTMLButtonElement).addEventListener("click", () => this.toggleLoop());
    const tempo = byId("tempo", HTMLInputElement);
    tempo.addEventListener("input", () => this.#tempoChanged(Number(tempo.value)));
  }

  get what() {
    const chosen = document.querySelector("input[name=what]:checked");
    return chosen instanceof HTMLInputElement ? chosen.value : "ornamented";
  }

  /** @param {string} value */
  setWhat(value) {
    const input = document.querySelector(`input[name=what][value="${value}"]`);
    if (!(input instanceof HTMLInputElement) || input.closest("[hidden]")) return;
    input.checked = true;
    this.#whatChanged();
  }

  /** Another arrangement, or the same after a decision. @param {ArrangementView} view */
  follow(view) {
    const { tempo } = view.setting;
    if (tempo !== this.arrangedFor) {
      this.arrangedFor = this.tempo = tempo;
      const slider = byId("tempo", HTMLInputElement);
      [slider.min, slider.max] = [String(Math.round(tempo * 0.4)), String(Math.round(tempo * 1.4))];
      slider.value = String(Math.round(tempo));
      this.#tempoWords();
    }
    this.seed = view.other_seed;
    for (const label of document.querySelectorAll("[data-other]")) label.toggleAttribute("hidden", view.other_seed === null);
    if (view.other_seed === null && ["other", "both"].includes(this.what)) this.setWhat("ornamented");
    this.refresh(this.hearing ? PATIENCE_MS : 0);
  }

  /** Ask anew what there is to hear, after a while. @param {number} afterMs */
  refresh(afterMs) {
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => { this.ready = this.#load(); }, afterMs);
  }

  async #load() {
    const number = ++this.asked;
    const feel = byId("band-feel", HTMLSelectElement).value;
    const words = byId("hear-words", HTMLElement);
    const wasAt = this.player.position, before = this.hearing;
    try {
      /** @type {HearingView} */
      const hearing = await ask(`arrangements/${this.arrangement}/hearing${query({ tempo: this.tempo, feel, seed: this.seed })}`);
      if (number !== this.asked) return;
      words.textContent = say("page-sound-preparing");
      await this.player.prepare(hearing);
      if (number !== this.asked) return;
      this.hearing = hearing;
      words.textContent = hearing.remark;
      if (wasAt && this.player.isPlaying && before) await this.#start(barAt(before, wasAt.sec), false);
    } catch (error) {
      words.textContent = error instanceof Error ? error.message : String(error);
    }
  }

  async toggle() {
    if (this.player.isPlaying) {
      this.player.stop();
      this.#shown();
      return;
    }
    byId("play-words", HTMLElement).textContent = say("page-wait");
    await this.ready;
    await this.#start(this.loop ? this.loop[0] : this.startBar, byId("count-in", HTMLInputElement).checked);
  }

  /** @param {number} bar @param {boolean} countIn */
  async #start(bar, countIn) {
    const hearing = this.hearing;
    if (!hearing) return this.#shown();
    const lines = LINES[this.what];
    const whole = /** @type {[number, number]} */ ([hearing.starts_at, hearing.ends_at]);
    const span = this.loop ? spanOf(hearing, this.loop) : null;
    const start = hearing.bars.find((time) => time.bar >= bar) ?? hearing.bars[0];
    const inTurn = !span && lines.length > 1;
    this.player.setLines(lines);
    await this.player.play({
      from: span ? Math.max(span[0], Math.min(start.start, span[1])) : start.start,
      start: hearing.starts_at,
      loop: span ?? (inTurn ? whole : null),
      passes: span ? Infinity : inTurn ? lines.length : 1,
      countIn,
    });
    this.player.setLines(lines);
    this.#shown();
    this.#follow();
  }

  #whatChanged() {
    const wasLooping = this.player.run?.loop;
    this.player.setLines(LINES[this.what]);
    const here = this.player.position;
    if (this.player.isPlaying && here && this.hearing && !wasLooping && LINES[this.what].length > 1) void this.#start(barAt(this.hearing, here.sec), false);
  }

  /** @param {number} tempo */
  #tempoChanged(tempo) {
    this.tempo = tempo;
    this.#tempoWords();
    this.refresh(PATIENCE_MS);
  }

  /** Slower or faster by beats a minute. @param {number} by */
  nudgeTempo(by) {
    const slider = byId("tempo", HTMLInputElement);
    slider.value = String(Number(slider.value) + by);
    this.#tempoChanged(Number(slider.value));
    announce(say("page-tempo-now", { tempo: Number(slider.value) }));
  }

  #tempoWords() {
    const share = Math.round((100 * this.tempo) / this.arrangedFor);
    byId("tempo-words", HTMLOutputElement).textContent = share === 100 ? `${Math.round(this.tempo)}` : say("page-tempo-share", { tempo: Math.round(this.tempo), share });
  }

  /** Loop bars, by their indices. @param {[number, number] | null} range @param {number[]} numbers */
  setLoop(range, numbers) {
    this.loop = range;
    this.score.showRange(range);
    const words = range ? say("page-hear-loop-bars", { first: numbers[range[0]], last: numbers[range[1]] }) : "";
    byId("loop-words", HTMLElement).textContent = words;
    byId("loop", HTMLButtonElement).setAttribute("aria-pressed", String(range !== null));
    announce(range ? say("page-hear-loop-on", { bars: words }) : say("page-hear-loop-off"));
    if (this.player.isPlaying && this.hearing) {
      const here = this.player.position;
      void this.#start(range ? range[0] : barAt(this.hearing, here?.sec ?? 0), false);
    }
  }

  /** What the loop button would loop when there is no loop yet. @type {() => void} */
  toggleLoop = () => {};

  /** Begin at a bar. @param {number} bar */
  startAt(bar) {
    this.startBar = bar;
    if (this.player.isPlaying && !this.loop) void this.#start(bar, false);
  }

  /** Play a sound alone. @param {Promise<ArrayBuffer>} sound */
  async hear(sound) {
    try {
      await this.player.playAlone(sound);
    } catch (error) {
      announce(error instanceof Error ? error.message : String(error));
    }
    this.#shown();
  }

  /** Band on or off. */
  toggleBand() {
    const parts = PARTS.slice(1, 4).map((part) => byId(`fader-${part}`, HTMLInputElement));
    const on = parts.some((fader) => fader.value !== "0");
    for (const [number, fader] of parts.entries()) {
      fader.value = on ? "0" : String(100 * USUAL[PARTS[number + 1]]);
      fader.dispatchEvent(new Event("input"));
    }
    announce(on ? say("page-hear-band-off") : say("page-hear-band-on"));
  }

  #shown() {
    const isPlaying = this.player.isPlaying;
    byId("play", HTMLButtonElement).setAttribute("aria-pressed", String(isPlaying));
    byId("play-words", HTMLElement).textContent = isPlaying ? say("page-stop") : say("page-play");
    if (!isPlaying) this.score.mark(null);
  }

  /** Let the marker follow the sound. */
  #follow() {
    const here = this.player.position;
    if (!here || !this.hearing) return this.score.mark(null);
    const name = this.player.lineOf(here.pass);
    const line = this.hearing.lines.find((one) => one.name === name);
    if (line) this.score.mark(noteAt(line.notes, here.sec));
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => this.#follow());
  }
}

/** The element of the note that sounds at a time. @param {[number, number, string][]} notes @param {number} sec */
export function noteAt(notes, sec) {
  let low = 0, high = notes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (notes[middle][0] <= sec) low = middle + 1;
    else high = middle;
  }
  const note = notes[low - 1];
  return note && sec < note[1] ? note[2] : null;
}

/** Index of the bar at a time. @param {HearingView} hearing @param {number} sec */
function barAt(hearing, sec) {
  return (hearing.bars.find((time) => sec < time.end) ?? hearing.bars[0]).bar;
}

/** Where bars begin and end, at the first time they are played. @param {HearingView} hearing @param {[number, number]} range @returns {[number, number] | null} */
function spanOf(hearing, range) {
  const first = hearing.bars.findIndex((time) => time.bar >= range[0]);
  if (first < 0) return null;
  const last = hearing.bars.findIndex((time, index) => index >= first && time.bar >= range[1]);
  return [hearing.bars[first].start, hearing.bars[last < 0 ? hearing.bars.length - 1 : last].end];
}
