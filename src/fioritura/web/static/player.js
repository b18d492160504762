/**
 * Plays sounds of one length together: melody lines, of which one is heard at a time, and band parts with faders. Loops
 * and turns are exact to the sample, as the sounds run on and only their gains change.
 */

import { askSound } from "./api.js";

/** @typedef {import("../types.d.ts").HearingView} HearingView */
/** @typedef {{from: number, start: number, loop: [number, number] | null, passes: number, countIn: boolean}} Plan */
/** @typedef {{startedAt: number, from: number, loop: [number, number] | null, endsAt: number, turn: number}} Run */

const AHEAD_SEC = 0.12;
const JOIN_SEC = 0.05;
const FADE_SEC = 0.012;
const TICK_MS = 100;
const SOON_SEC = 0.4;
const MOST_BUFFERS = 14;

/** The sound of one arrangement. `ended` is called when the music has stopped by itself. */
export class Player {
  /** @param {() => void} ended */
  constructor(ended) {
    this.ended = ended;
    /** @type {AudioContext | null} */
    this.context = null;
    /** @type {Map<string, Promise<AudioBuffer>>} */
    this.buffers = new Map();
    /** @type {HearingView | null} */
    this.hearing = null;
    /** @type {Map<string, {source: AudioBufferSourceNode, gain: GainNode}>} */
    this.voices = new Map();
    /** @type {Map<string, AudioBuffer>} */
    this.decoded = new Map();
    /** @type {Run | null} */
    this.run = null;
    /** @type {AudioBufferSourceNode | null} */
    this.single = null;
    this.timer = 0;
    /** Which line is heard at each pass. @type {string[]} */
    this.lines = ["ornamented"];
    /** @type {Record<string, number>} */
    this.levels = {};
  }

  get isPlaying() {
    return this.run !== null;
  }

  /** Fetch and decode all that a hearing needs. @param {HearingView} hearing */
  async load(hearing) {
    await this.prepare(hearing);
    await Promise.all(keysOf(hearing).map((key) => this.#buffer(key)));
  }

  /** Fetch and decode what is heard first; all else follows, and joins in when it is there. @param {HearingView} hearing */
  async prepare(hearing) {
    const keys = keysOf(hearing);
    const first = hearing.lines.filter((line) => this.lines.includes(line.name)).map((line) => line.sound);
    if (hearing.band.click) first.push(hearing.band.click);
    await Promise.all(first.map((key) => this.#buffer(key)));
    for (const key of keys) this.#buffer(key).catch(() => {});
    for (const key of this.buffers.keys()) {
      if (this.buffers.size <= MOST_BUFFERS) break;
      if (keys.includes(key)) continue;
      this.buffers.delete(key);
      this.decoded.delete(key);
    }
    this.hearing = hearing;
  }

  /** @param {string} key */
  #buffer(key) {
    let found = this.buffers.get(key);
    if (!found) {
      found = askSound(`sounds/${key}`).then((data) => new OfflineAudioContext(2, 1, 48000).decodeAudioData(data));
      found.then((buffer) => this.decoded.set(key, buffer), () => this.buffers.delete(key));
      this.buffers.set(key, found);
    }
    return found;
  }

  /** The audio context, running; must first be called from a click or key. */
  awake() {
    if (!this.context) {
      this.context = new AudioContext({ latencyHint: "interactive" });
      const limiter = new DynamicsCompressorNode(this.context, { threshold: -6, knee: 4, ratio: 12, attack: 0.003, release: 0.2 });
      limiter.connect(this.context.destination);
      this.out = new GainNode(this.context);
      this.out.connect(limiter);
    }
    void this.context.resume();
    return this.context;
  }

  /**
   * Play what is loaded. `from` is where in the sounds to begin; with `countIn` the click is heard before that.
   * @param {Plan} plan
   */
  async play(plan) {
    const hearing = this.hearing;
    if (!hearing) return;
    const context = this.awake();
    this.stop();
    await Promise.all(hearing.lines.filter((line) => this.lines.includes(line.name)).map((line) => this.#buffer(line.sound)));
    const click = hearing.band.click ? await this.#buffer(hearing.band.click) : null;
    if (this.run) return;
    let at = context.currentTime + AHEAD_SEC;
    const fromTop = plan.from <= hearing.bars[0].start;
    let from = plan.from;
    if (fromTop && plan.countIn) from = 0;
    else if (fromTop && !plan.countIn) from = Math.min(hearing.starts_at, ...hearing.lines.map((line) => line.notes[0]?.[0] ?? hearing.starts_at));
    else if (plan.countIn && click) {
      this.#single(click, at, 0, hearing.starts_at);
      at += hearing.starts_at;
    }
    const length = plan.loop ? plan.loop[1] - plan.loop[0] : 0;
    const first = plan.loop ? plan.loop[1] - from : hearing.ends_at + 2.5 - from;
    const endsAt = plan.passes === Infinity ? Infinity : at + first + (plan.passes - 1) * length;
    this.run = { startedAt: at, from, loop: plan.loop, endsAt, turn: 0 };
    this.#enter([...hearing.lines.map((line) => /** @type {[string, string]} */ ([line.name, line.sound])), ...Object.entries(hearing.band)], at);
    const clickGain = this.voices.get("click")?.gain.gain;
    if (clickGain) {
      const silentAt = from < hearing.starts_at ? at + hearing.starts_at - from - 0.02 : at;
      clickGain.setValueAtTime(from < hearing.starts_at ? 1 : this.#level("click"), at);
      clickGain.setValueAtTime(this.#level("click"), silentAt);
    }
    this.timer = window.setInterval(() => this.#tick(), TICK_MS);
  }

  /** Let sounds in, by name and key: those that are decoded now, the others as soon as they are. @param {[string, string][]} sounds @param {number} at */
  #enter(sounds, at) {
    const { run } = this;
    for (const [name, key] of sounds) {
      const buffer = this.decoded.get(key);
      if (buffer) this.#voice(name, buffer, at);
      else this.#buffer(key).then((late) => { if (this.run === run) this.#voice(name, late, at); }, () => {});
    }
  }

  /** A sound from a time on, or from now where that has passed. @param {string} name @param {AudioBuffer} buffer @param {number} at */
  #voice(name, buffer, at) {
    const run = this.run;
    if (!this.context || !this.out || !run) return;
    const gain = new GainNode(this.context, { gain: this.#level(name) });
    const source = new AudioBufferSourceNode(this.context, { buffer });
    if (run.loop) {
      source.loop = true;
      [source.loopStart, source.loopEnd] = run.loop;
    }
    source.connect(gain).connect(this.out);
    const now = this.context.currentTime + JOIN_SEC;
    if (at >= now) source.start(at, run.from);
    else source.start(now, placeIn(run, now).sec);
    if (run.endsAt !== Infinity) source.stop(run.endsAt + 0.3);
    this.voices.set(name, { source, gain });
  }

  /** Play a sound alone. @param {Promise<ArrayBuffer>} sound */
  async playAlone(sound) {
    const context = this.awake();
    this.stop();
    const buffer = await context.decodeAudioData(await sound);
    this.stop();
    this.#single(buffer, context.currentTime + 0.03, 0, buffer.duration);
  }

  /** @param {AudioBuffer} buffer @param {number} at @param {number} from @param {number} length */
  #single(buffer, at, from, length) {
    if (!this.context || !this.out) return;
    this.single = new AudioBufferSourceNode(this.context, { buffer });
    this.single.connect(this.out);
    this.single.start(at, from, length);
  }

  /** Silence, at once. */
  stop() {
    clearInterval(this.timer);
    this.single?.stop();
    this.single = null;
    const now = this.context?.currentTime ?? 0;
    for (const { source, gain } of this.voices.values()) {
      gain.gain.cancelScheduledValues(now);
      gain.gain.setTargetAtTime(0, now, FADE_SEC / 3);
      source.stop(now + 2 * FADE_SEC);
    }
    this.voices.clear();
    this.run = null;
  }

  /** Where the music is: seconds into the sounds, and how many times the loop has come round. */
  get position() {
    if (!this.run || !this.context) return null;
    const latency = this.context.outputLatency || 0;
    return placeIn(this.run, this.context.currentTime - latency);
  }

  /** The line that is heard in a pass. @param {number} pass */
  lineOf(pass) {
    return this.lines[pass % this.lines.length];
  }

  /** Hear these lines, one in each pass. @param {string[]} lines */
  setLines(lines) {
    this.lines = lines;
    const here = this.position;
    if (this.run) this.run.turn = here?.pass ?? 0;
    for (const name of this.voices.keys()) this.#fade(name);
  }

  /** How loud a part is, 0 to 1; "melody" stands for all lines. @param {string} name @param {number} level */
  setLevel(name, level) {
    this.levels[name] = level;
    const hearing = this.hearing;
    const lines = hearing ? hearing.lines.map((line) => line.name) : [];
    for (const voice of name === "melody" ? lines : [name]) this.#fade(voice);
  }

  /** @param {string} name */
  #fade(name) {
    const gain = this.voices.get(name)?.gain.gain;
    const now = this.context?.currentTime ?? 0;
    const counting = name === "click" && this.run && now < this.run.startedAt + (this.hearing?.starts_at ?? 0) - this.run.from;
    if (!gain || counting) return;
    gain.cancelScheduledValues(now);
    gain.setTargetAtTime(this.#level(name), now, FADE_SEC);
  }

  /** @param {string} name */
  #level(name) {
    const isLine = this.hearing?.lines.some((line) => line.name === name) ?? false;
    if (!isLine) return this.levels[name] ?? 1;
    return this.lineOf(this.run?.turn ?? 0) === name ? this.levels.melody ?? 1 : 0;
  }

  /** Change the line in time for the next pass; notice the end. */
  #tick() {
    const { run, context } = this;
    if (!run || !context) return;
    if (context.currentTime > run.endsAt) {
      this.stop();
      this.ended();
      return;
    }
    if (!run.loop || this.lines.length < 2) return;
    const length = run.loop[1] - run.loop[0];
    const next = run.startedAt + run.loop[1] - run.from + run.turn * length;
    if (next - context.currentTime > SOON_SEC) return;
    run.turn += 1;
    for (const line of this.hearing?.lines ?? []) this.voices.get(line.name)?.gain.gain.setValueAtTime(this.#level(line.name), next);
  }
}

/** Where a run is at a time of the audio clock. @param {Run} run @param {number} at */
function placeIn(run, at) {
  const sec = run.from + at - run.startedAt;
  const { loop } = run;
  if (!loop || sec < loop[1]) return { sec, pass: 0 };
  const over = sec - loop[1], length = loop[1] - loop[0];
  return { sec: loop[0] + (over % length), pass: 1 + Math.floor(over / length) };
}

/** The sounds of a hearing. @param {HearingView} hearing */
function keysOf(hearing) {
  return [...hearing.lines.map((line) => line.sound), ...Object.values(hearing.band)];
}
