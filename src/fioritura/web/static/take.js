/** The take: the line is shown, a recording is made or brought, and it is listened to. */

import { ask, query } from "./api.js";
import { announce, byId, el } from "./dom.js";
import { listenForKeys } from "./keys.js";
import { Score } from "./score.js";
import { guessedDelay, keepDelay, keptDelay, measuredDelay } from "./take-delay.js";
import { Meter } from "./take-meter.js";
import { Microphone, wavOf } from "./take-microphone.js";
import { Sending } from "./take-sending.js";
import { Session } from "./take-session.js";
import { noteAt } from "./transport.js";
import { moment, say } from "./words.js";

/** @typedef {import("../types.d.ts").HearingView} HearingView @typedef {import("../types.d.ts").ArrangementView} ArrangementView */
/** @typedef {import("./take-session.js").Wish} Wish @typedef {"idle" | "starting" | "recording" | "listening"} State */

const STAFF_STEPS = [5, 5.75, 6.5, 7, 7.75, 8.75, 10, 11.5];
const PATIENCE_MS = 350;
const MOST_EARLIER = 6;

const root = byId("take", HTMLElement), id = Number(root.dataset.arrangement);
const music = byId("music", HTMLElement), record = byId("record", HTMLButtonElement);
const tempo = byId("tempo", HTMLInputElement), choices = byId("choices", HTMLFieldSetElement);
const mostSec = Number(root.dataset.mostSec);

const meter = new Meter();
const microphone = new Microphone((level) => meter.show(level));
const session = new Session(microphone, () => void finish());
const sending = new Sending(Number(root.dataset.mostBytes), (isBusy) => setState(isBusy ? "listening" : "idle"));
const score = new Score(music, { figure: () => {}, bars: () => {}, bar: () => {} });

/** @type {ArrangementView["setting"] | null} */
let setting = null;
/** @type {number[]} */
let barNumbers = [];
let size = innerWidth < 560 ? 2 : 4;
/** @type {State} */
let state = "idle";
let ready = Promise.resolve();
let asked = 0, waiting = 0, frame = 0;

/** @returns {Wish} */
function wish() {
  const data = new FormData(byId("wishes", HTMLFormElement));
  return {
    line: String(data.get("line")),
    behind: /** @type {Wish["behind"]} */ (String(data.get("behind"))),
    loudness: (Number(byId("loudness", HTMLInputElement).value) / 100) ** 2,
    guide: byId("guide", HTMLInputElement).checked,
  };
}

// The line

async function showLine() {
  const { line } = chosen();
  music.setAttribute("aria-busy", "true");
  try {
    /** @type {import("../types.d.ts").LineView} */
    const shown = await ask(`arrangements/${id}/line${query({ which: line, width: score.widthMm, staff: STAFF_STEPS[size] })}`);
    barNumbers = shown.bar_numbers;
    score.draw(/** @type {any} */ ({ ...shown, figures: [], other: [] }), score.widthMm);
    byId("line-words", HTMLElement).textContent = say("page-take-line", { line });
  } catch (error) {
    music.replaceChildren(el("p", { class: "wrong" }, wordsOf(error)));
  }
  music.setAttribute("aria-busy", "false");
}

/** What is chosen, also while the choices are locked. */
function chosen() {
  const input = document.querySelector("input[name=line]:checked");
  return { line: input instanceof HTMLInputElement ? input.value : "ornamented" };
}

/** @param {number} by */
function resize(by) {
  size = Math.min(STAFF_STEPS.length - 1, Math.max(0, size + by));
  void showLine();
}

// The sound behind

function tempoWords() {
  const share = Math.round((100 * Number(tempo.value)) / (setting?.tempo ?? 1));
  byId("tempo-words", HTMLOutputElement).textContent = share === 100 ? `${tempo.value}` : say("page-tempo-share", { tempo: Number(tempo.value), share });
}

/** @param {number} afterMs */
function refresh(afterMs) {
  clearTimeout(waiting);
  ready = new Promise((resolve) => {
    waiting = window.setTimeout(() => { void load().then(resolve); }, afterMs);
  });
}

async function load() {
  const number = ++asked, words = byId("hear-words", HTMLElement);
  try {
    /** @type {HearingView} */
    const hearing = await ask(`arrangements/${id}/hearing${query({ tempo: Number(tempo.value) })}`);
    words.textContent = say("page-sound-preparing");
    await session.load(hearing);
    if (number === asked) words.textContent = hearing.remark;
  } catch (error) {
    words.textContent = wordsOf(error);
  }
}

// The microphone and its delay

/** @param {string} [device] */
async function openMicrophone(device) {
  await microphone.open(session.context, device);
  const devices = await microphone.devices(), list = byId("devices", HTMLSelectElement);
  list.replaceChildren(...devices.map((one) => el("option", { value: one.deviceId, selected: one.label === microphone.label }, one.label || say("page-microphone"))));
  byId("devices-label", HTMLElement).hidden = devices.length < 2;
  byId("try", HTMLButtonElement).textContent = say("page-microphone-close");
  showDelay();
}

function closeMicrophone() {
  microphone.close();
  byId("try", HTMLButtonElement).textContent = say("page-microphone-try");
  byId("level-words", HTMLElement).textContent = "";
  byId("meter", HTMLElement).setAttribute("aria-valuetext", say("page-microphone-closed"));
  byId("meter-bar", HTMLElement).style.width = byId("meter-peak", HTMLElement).style.left = "0";
}

async function tryMicrophone() {
  if (microphone.isOpen) return closeMicrophone();
  meter.reset();
  await told(() => openMicrophone());
}

function delay() {
  return keptDelay(microphone.label) ?? guessedDelay(session.context, microphone);
}

function showDelay() {
  const { sec, how } = delay(), ms = Math.round(1000 * sec);
  byId("delay-words", HTMLElement).textContent = say("page-delay-how", { ms, how });
  byId("delay", HTMLInputElement).value = String(ms);
  byId("delay-value", HTMLOutputElement).textContent = say("page-milliseconds", { ms });
}

async function measure() {
  const button = byId("measure", HTMLButtonElement);
  button.disabled = true;
  await told(async () => {
    if (!microphone.isOpen) await openMicrophone();
    announce(say("page-delay-listening"));
    keepDelay(microphone.label, await measuredDelay(session.context, microphone));
    showDelay();
    announce(say("page-delay-found", { delay: byId("delay-words", HTMLElement).textContent ?? "" }));
  });
  button.disabled = false;
}

// Recording

async function toggle() {
  if (state === "recording") return finish();
  if (state !== "idle") return;
  openPanel(false);
  setState("starting");
  sending.hide();
  await told(async () => {
    void session.context;
    await ready;
    await openMicrophone();
    if (!session.hearing) throw new Error(say("page-take-sound-not-ready"));
    meter.reset();
    microphone.full = () => void finish();
    await session.start(wish(), mostSec);
    setState("recording");
    follow();
  });
  if (/** @type {string} */ (state) === "starting") setState("idle");
}

function follow() {
  cancelAnimationFrame(frame);
  const hearing = session.hearing, sec = session.position;
  if (state !== "recording" || !hearing || sec === null) return;
  const count = byId("count", HTMLElement);
  if (sec < hearing.starts_at - 0.02) {
    const beats = Math.ceil(((hearing.starts_at - sec) * hearing.tempo) / 60);
    count.textContent = say("page-take-count-in", { beats });
  } else {
    const bar = hearing.bars.findLast((one) => one.start <= sec) ?? hearing.bars[0];
    const number = barNumbers[bar.bar];
    count.textContent = number ? say("page-take-bar", { bar: number, last: barNumbers.at(-1) ?? number }) : say("page-pickup");
  }
  const line = hearing.lines.find((one) => one.name === chosen().line);
  score.mark(line ? noteAt(line.notes, sec)?.replace(/^s\d-/, "s1-") ?? null : null);
  frame = requestAnimationFrame(follow);
}

async function finish() {
  if (state !== "recording") return;
  const last = session.stop(delay().sec);
  sending.last = last;
  setState("idle");
  score.mark(null);
  byId("count", HTMLElement).textContent = "";
  const seconds = last.samples.length / last.rate;
  if (seconds < 1) return announce(say("page-take-too-short"));
  if (meter.clips) announce(say("page-take-clips", { count: meter.clips }));
  await send(wavOf(last.samples, last.rate), last.offset);
}

/** @param {State} next */
function setState(next) {
  state = next;
  choices.disabled = next !== "idle";
  record.disabled = next === "listening" || next === "starting";
  record.setAttribute("aria-pressed", String(next === "recording"));
  byId("record-words", HTMLElement).textContent = say("page-take-record-button", { state: next });
}

/** @param {Blob} recording @param {number | null} offset */
function send(recording, offset) {
  return sending.send(recording, { arrangement: id, line: chosen().line, tempo: tempo.value, offset, student: byId("student", HTMLSelectElement).value });
}

/** @param {File | undefined} file */
async function bring(file) {
  if (!file || state !== "idle") return;
  sending.last = null;
  if (sending.takes(file)) await send(file, null);
}

// Students and earlier takes

async function addStudent() {
  const field = byId("student-name", HTMLInputElement), list = byId("student", HTMLSelectElement);
  await told(async () => {
    /** @type {import("../types.d.ts").StudentView} */
    const made = await ask("students", { method: "POST", json: { name: field.value } });
    list.append(el("option", { value: made.id }, made.name));
    list.value = String(made.id);
    field.value = "";
    announce(say("page-take-plays", { name: made.name }));
  });
}

async function showEarlier() {
  /** @type {import("../types.d.ts").TakeSummary[]} */
  const takes = await ask(`takes${query({ tune: Number(root.dataset.tune) })}`);
  byId("earlier-part", HTMLElement).hidden = !takes.length;
  byId("earlier", HTMLElement).replaceChildren(...takes.slice(0, MOST_EARLIER).map((take) => el("li", {},
    el("a", { href: `/takes/${take.id}` }, moment(take.taken_at)),
    el("span", { class: "muted" }, [take.student, take.facts.asked ? say("page-take-ornaments", { count: take.facts.done, total: take.facts.asked }) : say("page-line-name", { line: "plain" }), take.is_kept ? "" : say("page-take-not-kept")].filter(Boolean).join(", ")))));
}

/** Do something, and say what goes wrong. @param {() => Promise<void>} act */
async function told(act) {
  try {
    await act();
  } catch (error) {
    announce(wordsOf(error));
  }
}

/** @param {unknown} error */
function wordsOf(error) {
  return error instanceof Error ? error.message : String(error);
}

/** @param {string} name @param {string} value */
function choose(name, value) {
  const input = document.querySelector(`input[name=${name}][value=${value}]`);
  if (!(input instanceof HTMLInputElement) || choices.disabled) return;
  input.checked = true;
  input.dispatchEvent(new Event("change", { bubbles: true }));
}

/** @param {number} by */
function nudgeTempo(by) {
  if (choices.disabled) return;
  tempo.value = String(Number(tempo.value) + by);
  tempo.dispatchEvent(new Event("input"));
  announce(say("page-tempo-now", { tempo: Number(tempo.value) }));
}

const panel = byId("panel", HTMLElement), wishesButton = byId("wishes-button", HTMLButtonElement);

/** On a narrow page: show what can be chosen, or put it away. @param {boolean} opens */
function openPanel(opens) {
  panel.classList.toggle("open", opens);
  wishesButton.setAttribute("aria-expanded", String(opens));
  if (!opens && panel.contains(document.activeElement)) wishesButton.focus();
}

wishesButton.addEventListener("click", () => openPanel(!panel.classList.contains("open")));
byId("close-panel", HTMLElement).addEventListener("click", () => openPanel(false));
byId("wishes", HTMLFormElement).addEventListener("submit", (event) => event.preventDefault());
for (const input of document.querySelectorAll("input[name=line]")) input.addEventListener("change", () => void showLine());
tempo.addEventListener("input", () => { tempoWords(); refresh(PATIENCE_MS); });
byId("loudness", HTMLInputElement).addEventListener("input", () => session.setLevels(wish()));
record.addEventListener("click", () => void toggle());
byId("try", HTMLElement).addEventListener("click", () => void tryMicrophone());
byId("devices", HTMLSelectElement).addEventListener("change", (event) => void told(() => openMicrophone(/** @type {HTMLSelectElement} */ (event.target).value)));
byId("measure", HTMLElement).addEventListener("click", () => void measure());
byId("guess", HTMLElement).addEventListener("click", () => { keepDelay(microphone.label, null); showDelay(); });
byId("delay", HTMLInputElement).addEventListener("input", (event) => {
  keepDelay(microphone.label, { sec: Number(/** @type {HTMLInputElement} */ (event.target).value) / 1000, how: "by-hand" });
  showDelay();
});
byId("delay-part", HTMLElement).addEventListener("toggle", showDelay);
byId("student-add", HTMLElement).addEventListener("click", () => void addStudent());
byId("student-name", HTMLElement).addEventListener("keydown", (event) => { if (event.key === "Enter") void addStudent(); });
byId("again", HTMLElement).addEventListener("click", () => void toggle());
byId("playback", HTMLElement).addEventListener("click", () => sending.playBack(session.context));
byId("smaller", HTMLElement).addEventListener("click", () => resize(-1));
byId("larger", HTMLElement).addEventListener("click", () => resize(1));
const file = byId("file", HTMLInputElement), drop = byId("drop", HTMLElement);
file.addEventListener("change", () => { void bring(file.files?.[0]); file.value = ""; });
for (const kind of ["dragover", "dragenter"]) document.addEventListener(kind, (event) => { event.preventDefault(); drop.classList.add("over"); });
document.addEventListener("dragleave", () => drop.classList.remove("over"));
document.addEventListener("drop", (event) => {
  event.preventDefault();
  drop.classList.remove("over");
  void bring(event.dataTransfer?.files[0]);
});
addEventListener("pagehide", () => microphone.close());

listenForKeys([
  { keys: [" ", "r"], shown: `${say("page-keycap-space")} R`, words: say("page-take-key-record"), act: () => void toggle() },
  { keys: ["m"], shown: "M", words: say("page-take-key-microphone"), act: () => void tryMicrophone() },
  { keys: ["p"], shown: "P", words: say("page-take-key-plain"), act: () => choose("line", "plain") },
  { keys: ["o"], shown: "O", words: say("page-take-key-ornamented"), act: () => choose("line", "ornamented") },
  { keys: ["b"], shown: "B", words: say("page-take-key-band"), act: () => choose("behind", "band") },
  { keys: ["c"], shown: "C", words: say("page-take-key-click"), act: () => choose("behind", "click") },
  { keys: ["["], shown: "[ ]", words: say("page-key-slower-faster"), act: () => nudgeTempo(-4) },
  { keys: ["]"], words: say("page-key-faster"), act: () => nudgeTempo(4) },
  { keys: ["-"], shown: "− +", words: say("page-key-smaller-larger"), act: () => resize(-1) },
  { keys: ["+", "="], words: say("page-key-larger"), act: () => resize(1) },
  { keys: ["Escape"], shown: say("page-keycap-escape"), words: say("page-key-close-panel"), act: () => openPanel(false) },
]);

byId("student", HTMLSelectElement).value = new URLSearchParams(location.search).get("student") ?? "";

let width = 0, settling = 0;
new ResizeObserver(() => {
  if (score.widthMm === width) return;
  const isFirst = width === 0;
  width = score.widthMm;
  clearTimeout(settling);
  settling = window.setTimeout(() => void showLine(), isFirst ? 0 : 200);
}).observe(music);

await told(async () => {
  /** @type {ArrangementView} */
  const view = await ask(`arrangements/${id}`);
  setting = view.setting;
  [tempo.min, tempo.max] = [String(Math.round(setting.tempo * 0.4)), String(Math.round(setting.tempo * 1.4))];
  tempo.value = String(Math.round(setting.tempo));
  tempoWords();
  refresh(0);
  await showEarlier();
});
