/** The microphone: opened when it is first needed, metered while it is open, recorded to the sample. */

import { say } from "./words.js";

/** @typedef {{peak: number, rms: number, clipped: boolean}} Level */
/** @typedef {{samples: Float32Array, rate: number, startsAt: number}} Recorded `startsAt`: on the context's clock, in seconds */

const FULL = 0.985;
const FLAT_SAMPLES = 3;
/** As played: nothing that a telephone call would do to the sound. */
const PLAIN = { echoCancellation: false, noiseSuppression: false, autoGainControl: false, channelCount: 1 };

/** Records in an audio context, so that what is played and what is heard share one clock. */
export class Microphone {
  #disconnect = () => {};

  /** @param {(level: Level) => void} metered */
  constructor(metered) {
    this.metered = metered;
    /** @type {MediaStream | null} */
    this.stream = null;
    /** @type {AudioContext | null} */
    this.context = null;
    /** @type {{at: number, samples: Float32Array}[] | null} */
    this.blocks = null;
    this.mostSec = Infinity;
    /** Called when the longest recording is full. @type {() => void} */
    this.full = () => {};
  }

  get isOpen() {
    return this.stream?.active ?? false;
  }

  get label() {
    return this.stream?.getAudioTracks()[0]?.label ?? "";
  }

  /** What the device itself says of its delay, in seconds. */
  get ownDelaySec() {
    const settings = this.stream?.getAudioTracks()[0]?.getSettings();
    return /** @type {{latency?: number}} */ (settings ?? {}).latency ?? 0.01;
  }

  /**
   * Open a microphone; asks for leave the first time.
   * @param {AudioContext} context @param {string} [device]
   */
  async open(context, device) {
    if (!navigator.mediaDevices?.getUserMedia) throw new Error(say("page-microphone-not-encrypted"));
    if (this.isOpen && this.context === context && !device) return;
    this.close();
    const constraints = device ? { ...PLAIN, deviceId: { exact: device } } : PLAIN;
    try {
      this.stream = await navigator.mediaDevices.getUserMedia({ audio: constraints });
    } catch (error) {
      throw new Error(refusal(error));
    }
    this.context = context;
    await context.audioWorklet.addModule("/static/take-worklet.js");
    const node = new AudioWorkletNode(context, "recorder", { numberOfOutputs: 0 });
    node.port.onmessage = (event) => this.#take(event.data);
    const source = new MediaStreamAudioSourceNode(context, { mediaStream: this.stream });
    source.connect(node);
    this.#disconnect = () => {
      node.port.onmessage = null;
      source.disconnect();
    };
  }

  /** @returns {Promise<MediaDeviceInfo[]>} */
  async devices() {
    return (await navigator.mediaDevices.enumerateDevices()).filter((device) => device.kind === "audioinput");
  }

  close() {
    this.#disconnect();
    for (const track of this.stream?.getTracks() ?? []) track.stop();
    this.stream = null;
  }

  /** Begin to record. @param {number} mostSec */
  start(mostSec) {
    this.mostSec = mostSec;
    this.blocks = [];
  }

  /** What was recorded since the start. @returns {Recorded} */
  stop() {
    const rate = this.context?.sampleRate ?? 48000;
    const blocks = this.blocks ?? /** @type {{at: number, samples: Float32Array}[]} */ ([]);
    this.blocks = null;
    const samples = new Float32Array(blocks.reduce((sum, block) => sum + block.samples.length, 0));
    let filled = 0;
    for (const block of blocks) {
      samples.set(block.samples, filled);
      filled += block.samples.length;
    }
    return { samples, rate, startsAt: (blocks[0]?.at ?? 0) / rate };
  }

  /** @param {{at: number, samples: Float32Array}} block */
  #take(block) {
    this.metered(levelOf(block.samples));
    if (!this.blocks) return;
    this.blocks.push(block);
    if (this.blocks.length * block.samples.length >= this.mostSec * (this.context?.sampleRate ?? 48000)) this.full();
  }
}

/** Peak, loudness, and whether the wave lies flat at its greatest. @param {Float32Array} samples @returns {Level} */
export function levelOf(samples) {
  let peak = 0, energy = 0, run = 0, longest = 0;
  for (const sample of samples) {
    const height = Math.abs(sample);
    peak = Math.max(peak, height);
    energy += sample * sample;
    run = height >= FULL ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return { peak, rms: Math.sqrt(energy / samples.length), clipped: longest >= FLAT_SAMPLES };
}

/** Samples as a WAV file: mono, 16 bits. @param {Float32Array} samples @param {number} rate */
export function wavOf(samples, rate) {
  const data = new DataView(new ArrayBuffer(44 + 2 * samples.length));
  const words = (/** @type {number} */ at, /** @type {string} */ text) => [...text].forEach((char, index) => data.setUint8(at + index, char.charCodeAt(0)));
  words(0, "RIFF");
  data.setUint32(4, 36 + 2 * samples.length, true);
  words(8, "WAVEfmt ");
  data.setUint32(16, 16, true);
  data.setUint16(20, 1, true);
  data.setUint16(22, 1, true);
  data.setUint32(24, rate, true);
  data.setUint32(28, 2 * rate, true);
  data.setUint16(32, 2, true);
  data.setUint16(34, 16, true);
  words(36, "data");
  data.setUint32(40, 2 * samples.length, true);
  for (let index = 0; index < samples.length; index++) {
    data.setInt16(44 + 2 * index, Math.round(32767 * Math.max(-1, Math.min(1, samples[index]))), true);
  }
  return new Blob([data], { type: "audio/wav" });
}

/** @param {unknown} error */
function refusal(error) {
  const name = error instanceof DOMException ? error.name : "";
  if (name === "NotAllowedError") return say("page-microphone-not-allowed");
  if (name === "NotFoundError" || name === "OverconstrainedError") return say("page-microphone-none");
  if (name === "NotReadableError") return say("page-microphone-taken");
  return error instanceof Error ? error.message : String(error);
}
