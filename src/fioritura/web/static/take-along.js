/** A take heard together with the band that it was played to. */

import { ask, askSound, query } from "./api.js";
import { Player } from "./player.js";

/** @typedef {import("../types.d.ts").TakeSummary} TakeSummary @typedef {import("../types.d.ts").HearingView} HearingView */

const RATE = 48000;
const BAND = { bass: 0.64, chords: 0.64, drums: 0.64, click: 0 };

/** Plays a take with its band. `changed` is called when it begins and ends. */
export class Along {
  /** @param {TakeSummary} take @param {() => void} changed */
  constructor(take, changed) {
    this.take = take;
    this.changed = changed;
    this.player = new Player(changed);
    this.isLoaded = false;
  }

  get isPlaying() {
    return this.player.isPlaying;
  }

  /** Seconds into the recording, as it is heard. */
  get position() {
    const here = this.player.position;
    return here ? here.sec - this.take.facts.offset_sec : null;
  }

  async toggle() {
    if (this.isPlaying) this.stop();
    else {
      this.player.awake();
      if (!this.isLoaded) await this.#load();
      const start = this.player.hearing?.starts_at ?? 0;
      await this.player.play({ from: 0, start, loop: null, passes: 1, countIn: true });
      this.changed();
    }
  }

  stop() {
    this.player.stop();
    this.changed();
  }

  async #load() {
    const { id, arrangement, facts } = this.take;
    const [hearing, data] = await Promise.all([
      ask(`arrangements/${arrangement}/hearing${query({ tempo: facts.tempo, feel: facts.feel })}`),
      askSound(`takes/${id}/sound`),
    ]);
    const recorded = await new OfflineAudioContext(1, 1, RATE).decodeAudioData(data);
    this.player.buffers.set("take", Promise.resolve(shifted(recorded, facts.offset_sec)));
    this.player.setLines(["take"]);
    for (const [part, level] of Object.entries(BAND)) this.player.setLevel(part, level);
    await this.player.load({ ...hearing, lines: [{ name: "take", sound: "take", notes: hearing.lines[0].notes }] });
    this.isLoaded = true;
  }
}

/** A recording that begins later by some seconds, in mono. @param {AudioBuffer} recorded @param {number} bySec */
export function shifted(recorded, bySec) {
  const by = Math.round(bySec * recorded.sampleRate), samples = recorded.getChannelData(0);
  const made = new AudioBuffer({ length: Math.max(1, samples.length + by), sampleRate: recorded.sampleRate });
  made.copyToChannel(by < 0 ? samples.subarray(-by) : samples, 0, Math.max(0, by));
  return made;
}
