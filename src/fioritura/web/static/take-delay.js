/**
 * The delay between what is played to a player and what comes back by the microphone: guessed from what the browser says,
 * measured with clicks through the air, or set by hand. It is taken off, so that a note with the beat is heard on the beat.
 */

import { say } from "./words.js";

const CLICKS = 5;
const EVERY_SEC = 0.4;
const LEAD_SEC = 0.3;
const LONGEST_SEC = 0.35;
const CLEAR = 8;
const APART_SEC = 0.004;
const STORED = "fioritura-delay";

/** @typedef {{sec: number, how: "guessed" | "measured" | "by-hand"}} Delay */

/** What the browser and the device say of their delays. @param {AudioContext} context @param {import("./take-microphone.js").Microphone} microphone @returns {Delay} */
export function guessedDelay(context, microphone) {
  return { sec: (context.outputLatency || context.baseLatency || 0) + (context.baseLatency || 0) + microphone.ownDelaySec, how: "guessed" };
}

/** The delay that was kept for a microphone. @param {string} label @returns {Delay | null} */
export function keptDelay(label) {
  try {
    return JSON.parse(localStorage.getItem(STORED) ?? "{}")[label] ?? null;
  } catch {
    return null;
  }
}

/** Keep the delay of a microphone; null to guess again. @param {string} label @param {Delay | null} delay */
export function keepDelay(label, delay) {
  /** @type {Record<string, Delay>} */
  let kept = {};
  try {
    kept = JSON.parse(localStorage.getItem(STORED) ?? "{}");
  } catch { /* what is there is of no use */ }
  if (delay) kept[label] = delay;
  else delete kept[label];
  localStorage.setItem(STORED, JSON.stringify(kept));
}

/** One click: a burst of 4 ms that begins at once. @param {number} rate */
export function click(rate) {
  const samples = new Float32Array(Math.round(0.004 * rate));
  for (let index = 0; index < samples.length; index++) {
    const time = index / rate;
    samples[index] = Math.sin(2 * Math.PI * 2500 * time) * Math.exp(-time / 0.0012);
  }
  return samples;
}

/**
 * Play clicks and hear them come back.
 * @param {AudioContext} context @param {import("./take-microphone.js").Microphone} microphone @returns {Promise<Delay>}
 */
export async function measuredDelay(context, microphone) {
  const wave = click(context.sampleRate);
  const buffer = new AudioBuffer({ length: wave.length, sampleRate: context.sampleRate });
  buffer.copyToChannel(wave, 0);
  microphone.start(60);
  const first = context.currentTime + LEAD_SEC;
  const times = Array.from({ length: CLICKS }, (_, index) => first + index * EVERY_SEC);
  for (const time of times) {
    const source = new AudioBufferSourceNode(context, { buffer });
    source.connect(context.destination);
    source.start(time);
  }
  await new Promise((resolve) => setTimeout(resolve, 1000 * (LEAD_SEC + CLICKS * EVERY_SEC + 0.2)));
  const { samples, rate, startsAt } = microphone.stop();
  const sec = delayOf(samples, rate, times.map((time) => time - startsAt), wave);
  if (sec === null) throw new Error(say("page-delay-unclear"));
  return { sec, how: "measured" };
}

/**
 * How long after their times clicks are heard, in seconds; null where they are not clear, or do not agree.
 * @param {Float32Array} samples @param {number} rate @param {number[]} times @param {Float32Array} wave
 */
export function delayOf(samples, rate, times, wave) {
  const found = times.map((time) => answer(samples, rate, time, wave)).filter((delay) => delay !== null).sort((a, b) => a - b);
  if (found.length < times.length - 1) return null;
  const middle = found[found.length >> 1];
  return found.filter((delay) => Math.abs(delay - middle) < APART_SEC).length >= times.length - 1 ? middle : null;
}

/** @param {Float32Array} samples @param {number} rate @param {number} time @param {Float32Array} wave @returns {number | null} */
function answer(samples, rate, time, wave) {
  const start = Math.max(0, Math.round(time * rate)), length = Math.round(LONGEST_SEC * rate);
  if (start + length + wave.length > samples.length) return null;
  const likeness = new Float32Array(length);
  for (let lag = 0; lag < length; lag++) {
    let sum = 0;
    for (let index = 0; index < wave.length; index++) sum += samples[start + lag + index] * wave[index];
    likeness[lag] = Math.abs(sum);
  }
  const usual = likeness.slice().sort()[length >> 1];
  let best = 0;
  for (let lag = 1; lag < length; lag++) if (likeness[lag] > likeness[best]) best = lag;
  return likeness[best] > 1e-4 && likeness[best] > CLEAR * usual ? best / rate : null;
}
