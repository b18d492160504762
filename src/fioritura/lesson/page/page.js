"use strict";
// Plays the examples with notes recorded from the lesson's own instrument, at any tempo, and moves the markers.
const data = JSON.parse(document.getElementById("music").textContent);
const words = data.words;
const status = document.getElementById("status");
const tempo = document.getElementById("tempo");
const tempoText = document.getElementById("tempo-text");
const loop = document.getElementById("loop");
const volume = document.getElementById("volume");
let context = null, samples = null, master = null, playing = null;

function showTempo() {
  tempoText.textContent = data.beat + " = " + tempo.value;
}

async function prepare() {
  if (!context) {
    context = new AudioContext();
    master = context.createGain();
    master.connect(context.destination);
  }
  if (context.state === "suspended") await context.resume();
  master.gain.value = Math.pow(Number(volume.value) / 100, 2);
  if (!samples) {
    samples = await Promise.all(data.samples.map(async ([midi, base64]) => {
      const bytes = Uint8Array.from(atob(base64), (char) => char.charCodeAt(0));
      return [midi, await context.decodeAudioData(bytes.buffer)];
    }));
  }
}

function click(at, isFirst) {
  const source = context.createOscillator(), gain = context.createGain();
  source.frequency.value = isFirst ? 1400 : 1000;
  gain.gain.setValueAtTime(0.25, at);
  gain.gain.exponentialRampToValueAtTime(0.001, at + 0.06);
  source.connect(gain).connect(master);
  source.start(at);
  source.stop(at + 0.08);
  return source;
}

function note(at, seconds, midi, loudness, bend, stretch) {
  const [from, buffer] = samples.reduce((best, sample) =>
    Math.abs(sample[0] - midi) < Math.abs(best[0] - midi) ? sample : best);
  const source = context.createBufferSource(), gain = context.createGain();
  source.buffer = buffer;
  source.playbackRate.value = Math.pow(2, (midi - from) / 12);
  for (const [after, semitones] of bend) {
    const time = at + after * stretch;
    if (after === 0) source.detune.setValueAtTime(semitones * 100, at);
    else source.detune.linearRampToValueAtTime(semitones * 100, time);
  }
  gain.gain.setValueAtTime(0, at);
  gain.gain.linearRampToValueAtTime(loudness, at + 0.008);
  gain.gain.setValueAtTime(loudness, Math.max(at + 0.01, at + seconds - 0.01));
  gain.gain.linearRampToValueAtTime(0, at + seconds + 0.04);
  source.connect(gain).connect(master);
  source.start(at);
  source.stop(at + seconds + 0.06);
  return source;
}

function stop() {
  if (!playing) return;
  cancelAnimationFrame(playing.frame);
  clearTimeout(playing.timer);
  for (const source of playing.sources) { try { source.stop(); } catch (error) { /* it has ended by itself */ } }
  playing.button.setAttribute("aria-pressed", "false");
  for (const marker of playing.markers) marker.setAttribute("visibility", "hidden");
  playing = null;
}

// One after the other: a bar of clicks, then each line; times are seconds at the goal tempo.
function schedule(run) {
  const stretch = data.goal / Number(tempo.value);
  const begin = context.currentTime + 0.12;
  run.sources = [];
  run.steps = [];
  let at = begin;
  if (run.first) {
    data.clicks.forEach((after, number) => run.sources.push(click(at + after * stretch, number === 0)));
    at += data.countIn * stretch;
  }
  for (const name of run.lines) {
    const line = data.scores[run.score][name];
    for (const [onset, seconds, midi, loudness, bend] of line.notes)
      run.sources.push(note(at + onset * stretch, seconds * stretch, midi, loudness, bend, stretch));
    for (const [onset, system, x, top, bottom] of line.marks) run.steps.push([at + onset * stretch, system, x, top, bottom]);
    at += line.lasts * stretch;
  }
  run.end = at;
  run.first = false;
}

function follow() {
  const run = playing;
  if (!run) return;
  const now = context.currentTime;
  let current = null;
  for (const step of run.steps) { if (step[0] <= now) current = step; else break; }
  run.markers.forEach((marker, system) => {
    const isHere = current && current[1] === system;
    marker.setAttribute("visibility", isHere ? "visible" : "hidden");
    if (isHere) {
      marker.setAttribute("x", current[2]);
      marker.setAttribute("y", current[3]);
      marker.setAttribute("height", current[4] - current[3]);
    }
  });
  if (now >= run.end) {
    if (loop.checked) schedule(run);
    else { stop(); status.textContent = words.stopped; return; }
  }
  run.frame = requestAnimationFrame(follow);
}

async function start(button) {
  const wasThis = playing && playing.button === button;
  stop();
  if (wasThis) { status.textContent = words.stopped; return; }
  await prepare();
  const score = button.dataset.score;
  const markers = [...document.querySelectorAll(`#score-${score} .marker`)];
  playing = { button, score, lines: button.dataset.lines.split(" "), markers, first: true, sources: [], steps: [] };
  button.setAttribute("aria-pressed", "true");
  status.textContent = words.playing + " " + button.getAttribute("aria-label");
  schedule(playing);
  follow();
}

for (const button of document.querySelectorAll("button[data-score]")) button.addEventListener("click", () => start(button));
document.getElementById("stop").addEventListener("click", () => { stop(); status.textContent = words.stopped; });
document.addEventListener("keydown", (event) => { if (event.key === "Escape") stop(); });
tempo.addEventListener("input", showTempo);
volume.addEventListener("input", () => { if (master) master.gain.value = Math.pow(Number(volume.value) / 100, 2); });
document.querySelector(".desk form").addEventListener("submit", (event) => event.preventDefault());
window.lessonState = () => playing && { score: playing.score, sources: playing.sources.length, end: playing.end };
showTempo();
