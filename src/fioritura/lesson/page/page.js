"use strict";
// Plays the examples with notes recorded from the lesson's own instrument, at any tempo, and moves the markers.

/**
 * @typedef {[at: number, system: number, x: number, top: number, bottom: number]} Mark when and where the marker stands
 * @typedef {[after: number, semitones: number]} Bend
 * @typedef {{notes: [onset: number, seconds: number, midi: number, loudness: number, bend: Bend[]][], marks: Mark[], lasts: number}} Line
 * @typedef {{beat: string, goal: number, clicks: number[], countIn: number, scores: Record<string, Record<string, Line>>,
 *   samples: [midi: number, base64: string][], words: {stopped: string}}} Music times in seconds at the goal tempo
 * @typedef {{button: HTMLButtonElement, score: string, lines: string[], markers: Element[], first: boolean,
 *   sources: AudioScheduledSourceNode[], steps: Mark[], end: number, frame: number}} Run
 */

/**
 * The element with an id.
 * @template {HTMLElement} T
 * @param {string} id @param {new (...args: any[]) => T} kind @returns {T}
 */
function byId(id, kind) {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`#${id} is missing`);
  return found;
}

/** @type {Music} */
const data = JSON.parse(byId("music", HTMLElement).textContent ?? "");
const words = data.words;
const status = byId("status", HTMLElement);
const tempo = byId("tempo", HTMLInputElement);
const tempoText = byId("tempo-text", HTMLElement);
const loop = byId("loop", HTMLInputElement);
const volume = byId("volume", HTMLInputElement);
/** @type {{context: AudioContext, master: GainNode, samples: [number, AudioBuffer][]} | null} */
let sound = null;
/** @type {Run | null} */
let playing = null;

function showTempo() {
  tempoText.textContent = data.beat + " = " + tempo.value;
}

function loudness() {
  return Math.pow(Number(volume.value) / 100, 2);
}

/** The sound, ready to play: the samples are decoded once. */
async function prepare() {
  if (!sound) {
    const context = new AudioContext(), master = context.createGain();
    master.connect(context.destination);
    sound = { context, master, samples: [] };
  }
  const { context, master } = sound;
  if (context.state === "suspended") await context.resume();
  master.gain.value = loudness();
  if (!sound.samples.length) {
    sound.samples = await Promise.all(data.samples.map(async ([midi, base64]) => {
      const bytes = Uint8Array.from(atob(base64), (char) => char.charCodeAt(0));
      return /** @type {[number, AudioBuffer]} */ ([midi, await context.decodeAudioData(bytes.buffer)]);
    }));
  }
  return sound;
}

/** @typedef {NonNullable<typeof sound>} Sound */

/** @param {Sound} sound @param {number} at @param {boolean} isFirst */
function click({ context, master }, at, isFirst) {
  const source = context.createOscillator(), gain = context.createGain();
  source.frequency.value = isFirst ? 1400 : 1000;
  gain.gain.setValueAtTime(0.25, at);
  gain.gain.exponentialRampToValueAtTime(0.001, at + 0.06);
  source.connect(gain).connect(master);
  source.start(at);
  source.stop(at + 0.08);
  return source;
}

/** @param {Sound} sound @param {number} at @param {number} stretch @param {Line["notes"][number]} note its times are stretched */
function sounded({ context, master, samples }, at, stretch, [onset, lasts, midi, loudness, bend]) {
  const [from, buffer] = samples.reduce((best, sample) =>
    Math.abs(sample[0] - midi) < Math.abs(best[0] - midi) ? sample : best);
  const source = context.createBufferSource(), gain = context.createGain();
  const start = at + onset * stretch, seconds = lasts * stretch;
  source.buffer = buffer;
  source.playbackRate.value = Math.pow(2, (midi - from) / 12);
  for (const [after, semitones] of bend) {
    if (after === 0) source.detune.setValueAtTime(semitones * 100, start);
    else source.detune.linearRampToValueAtTime(semitones * 100, start + after * stretch);
  }
  gain.gain.setValueAtTime(0, start);
  gain.gain.linearRampToValueAtTime(loudness, start + 0.008);
  gain.gain.setValueAtTime(loudness, Math.max(start + 0.01, start + seconds - 0.01));
  gain.gain.linearRampToValueAtTime(0, start + seconds + 0.04);
  source.connect(gain).connect(master);
  source.start(start);
  source.stop(start + seconds + 0.06);
  return source;
}

function stop() {
  if (!playing) return;
  cancelAnimationFrame(playing.frame);
  for (const source of playing.sources) { try { source.stop(); } catch (error) { /* it has ended by itself */ } }
  playing.button.setAttribute("aria-pressed", "false");
  for (const marker of playing.markers) marker.setAttribute("visibility", "hidden");
  playing = null;
}

/** One after the other: a bar of clicks, then each line. @param {Sound} sound @param {Run} run */
function schedule(sound, run) {
  const stretch = data.goal / Number(tempo.value);
  const begin = sound.context.currentTime + 0.12;
  run.sources = [];
  run.steps = [];
  let at = begin;
  if (run.first) {
    data.clicks.forEach((after, number) => run.sources.push(click(sound, begin + after * stretch, number === 0)));
    at += data.countIn * stretch;
  }
  for (const name of run.lines) {
    const line = data.scores[run.score][name];
    for (const note of line.notes) run.sources.push(sounded(sound, at, stretch, note));
    for (const [onset, system, x, top, bottom] of line.marks) run.steps.push([at + onset * stretch, system, x, top, bottom]);
    at += line.lasts * stretch;
  }
  run.end = at;
  run.first = false;
}

function follow() {
  const run = playing;
  if (!run || !sound) return;
  const now = sound.context.currentTime;
  /** @type {Mark | null} */
  let current = null;
  for (const step of run.steps) { if (step[0] <= now) current = step; else break; }
  for (const [system, marker] of run.markers.entries()) {
    const here = current?.[1] === system ? current : null;
    marker.setAttribute("visibility", here ? "visible" : "hidden");
    if (here) {
      marker.setAttribute("x", String(here[2]));
      marker.setAttribute("y", String(here[3]));
      marker.setAttribute("height", String(here[4] - here[3]));
    }
  }
  if (now >= run.end) {
    if (loop.checked) schedule(sound, run);
    else { stop(); status.textContent = words.stopped; return; }
  }
  run.frame = requestAnimationFrame(follow);
}

/** Play what a button stands for, or stop it. @param {HTMLButtonElement} button */
async function start(button) {
  const wasThis = playing && playing.button === button;
  stop();
  if (wasThis) { status.textContent = words.stopped; return; }
  const ready = await prepare();
  const score = button.dataset.score ?? "", lines = (button.dataset.lines ?? "").split(" ");
  const markers = [...document.querySelectorAll(`#score-${score} .marker`)];
  playing = { button, score, lines, markers, first: true, sources: [], steps: [], end: 0, frame: 0 };
  button.setAttribute("aria-pressed", "true");
  status.textContent = button.dataset.playing ?? "";
  schedule(ready, playing);
  follow();
}

for (const button of document.querySelectorAll("button[data-score]")) {
  if (button instanceof HTMLButtonElement) button.addEventListener("click", () => void start(button));
}
byId("stop", HTMLElement).addEventListener("click", () => { stop(); status.textContent = words.stopped; });
document.addEventListener("keydown", (event) => { if (event.key === "Escape") stop(); });
tempo.addEventListener("input", showTempo);
volume.addEventListener("input", () => { if (sound) sound.master.gain.value = loudness(); });
document.querySelector(".desk form")?.addEventListener("submit", (event) => event.preventDefault());
Object.assign(window, { lessonState: () => playing && { score: playing.score, sources: playing.sources.length, end: playing.end } });
showTempo();
