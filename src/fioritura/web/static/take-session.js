/** One recording: the count-in, the band and the microphone on one clock, and what came in cut to the music. */

import { Player } from "./player.js";

/** @typedef {import("../types.d.ts").HearingView} HearingView @typedef {import("./take-microphone.js").Microphone} Microphone */
/** @typedef {{line: string, behind: "band" | "click" | "nothing", loudness: number, guide: boolean}} Wish */
/** @typedef {{samples: Float32Array, rate: number, offset: number | null}} Taken `offset`: where in the time of the hearing it begins */

const LEAD_SEC = 0.8;
const TAIL_SEC = 2.0;
const GUIDE = 0.25;

/** Plays and records. `ended` is called when the music has come to its end. */
export class Session {
  /** @param {Microphone} microphone @param {() => void} ended */
  constructor(microphone, ended) {
    this.microphone = microphone;
    this.player = new Player(ended);
    /** @type {HearingView | null} */
    this.hearing = null;
    /** @type {Wish | null} */
    this.wish = null;
    /** When the sounds' first sample is played, on the context's clock. */
    this.zeroAt = 0;
  }

  get context() {
    return this.player.awake();
  }

  /** @param {HearingView} hearing */
  async load(hearing) {
    await this.player.load(hearing);
    this.hearing = hearing;
  }

  /** @param {Wish} wish @param {number} mostSec */
  async start(wish, mostSec) {
    const hearing = /** @type {HearingView} */ (this.hearing);
    this.wish = wish;
    this.setLevels(wish);
    this.player.setLines([wish.line]);
    this.microphone.start(mostSec);
    await this.player.play({ from: 0, start: hearing.starts_at, loop: null, passes: 1, countIn: true });
    const run = this.player.run;
    this.zeroAt = run ? run.startedAt - run.from : this.context.currentTime;
  }

  /** @param {Wish} wish */
  setLevels({ behind, loudness, guide }) {
    for (const part of ["bass", "chords", "drums"]) this.player.setLevel(part, behind === "band" ? loudness : 0);
    this.player.setLevel("click", behind === "click" ? loudness : 0);
    this.player.setLevel("melody", guide ? GUIDE * loudness : 0);
  }

  /** Seconds into the sounds, as they are heard; null when nothing plays. */
  get position() {
    return this.player.position?.sec ?? null;
  }

  /** Stop, and give what was recorded without the count-in. @param {number} delaySec @returns {Taken} */
  stop(delaySec) {
    this.player.stop();
    const { samples, rate, startsAt } = this.microphone.stop();
    const hearing = /** @type {HearingView} */ (this.hearing);
    const first = Math.min(hearing.starts_at, ...hearing.lines.map((line) => line.notes[0]?.[0] ?? hearing.starts_at));
    const began = startsAt - delaySec - this.zeroAt;
    const from = Math.max(began, first - LEAD_SEC), to = hearing.ends_at + TAIL_SEC;
    const cut = samples.subarray(Math.round((from - began) * rate), Math.max(0, Math.round((to - began) * rate)));
    return { samples: cut, rate, offset: this.wish?.behind === "nothing" ? null : from };
  }
}
