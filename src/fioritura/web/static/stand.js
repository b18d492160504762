/** The stand: an arrangement on the page, to be worked on and heard. */

import { ApiError, ask, query } from "./api.js";
import { announce, byId, el } from "./dom.js";
import { familyName, shapeIcon } from "./families.js";
import { FigurePanel } from "./figure.js";
import { listenForKeys } from "./keys.js";
import { Score } from "./score.js";
import { SettingForm } from "./setting.js";
import { Transport } from "./transport.js";
import { say } from "./words.js";

/** @typedef {import("../types.d.ts").ArrangementView} ArrangementView */

const STAFF_STEPS = [5, 5.75, 6.5, 7, 7.75, 8.75, 10, 11.5];
const STORED_SIZE = "fioritura-staff";

const music = byId("music", HTMLElement);
const id = Number(music.dataset.arrangement);
const panel = byId("panel", HTMLElement);

/** @type {ArrangementView | null} */
let view = null;
/** @type {string | null} */
let chosen = null;
/** @type {number | null} */
let seed = null;
let size = Math.min(STAFF_STEPS.length - 1, Math.max(0, Number(localStorage.getItem(STORED_SIZE) ?? (innerWidth < 560 ? 1 : 3))));

const score = new Score(music, {
  figure: (figure) => choose(figure, true),
  bars: (first, last) => transport.setLoop([first, last], view?.bar_numbers ?? []),
  bar: (bar) => transport.startAt(bar),
});
const transport = new Transport(id, score);
const figurePanel = new FigurePanel(byId("pane-figure", HTMLElement), id, {
  decide: (wish) => void decide(wish),
  hear: (sound) => void transport.hear(sound),
});
const setting = new SettingForm((wanted) => void set(wanted));

/** What the server must know of the page. */
function sheet() {
  return query({ width: score.widthMm, staff: STAFF_STEPS[size], seed });
}

/** @param {ArrangementView} next */
function show(next) {
  const before = view;
  view = next;
  score.draw(next, score.widthMm);
  setting.show(next.setting);
  byId("title", HTMLElement).textContent = next.title;
  byId("setting-words", HTMLElement).textContent = setting.words;
  const undo = byId("undo", HTMLButtonElement), redo = byId("redo", HTMLButtonElement);
  undo.disabled = !next.step.undoes;
  undo.title = next.step.undoes ? say("page-stand-undo-what", { what: next.step.undoes }) : say("page-stand-undo-nothing");
  redo.disabled = !next.step.redoes;
  redo.title = next.step.redoes ? say("page-stand-redo-what", { what: next.step.redoes }) : say("page-stand-redo-nothing");
  byId("notes", HTMLElement).replaceChildren(...next.notes.map((note) => el("li", {}, note)));
  showLegend(next);
  showVersions(next);
  choose(stillThere(before, next), false);
  transport.follow(next);
}

/** The chosen figure if it stands, else the one at its place. @param {ArrangementView | null} before @param {ArrangementView} next */
function stillThere(before, next) {
  if (!chosen || next.figures.some((figure) => figure.id === chosen)) return chosen;
  const old = before?.figures.find((figure) => figure.id === chosen);
  const near = next.figures.find((figure) => old && figure.bar === old.bar && Math.abs(figure.beat - old.beat) <= 1);
  return near?.id ?? null;
}

/** @param {ArrangementView} next */
function showLegend(next) {
  const families = [...new Set([...next.figures, ...next.other].map((figure) => figure.family))];
  const kept = say("page-stand-figures", { count: next.figures.length, share: Math.round(100 * next.kept_share) });
  byId("legend", HTMLElement).replaceChildren(
    ...families.map((family) => el("li", {}, shapeIcon(family), familyName(family))), el("li", { class: "muted" }, kept));
}

/** @param {ArrangementView} next */
function showVersions(next) {
  const isShown = next.other_seed !== null;
  byId("other-show", HTMLElement).hidden = isShown;
  for (const name of ["other-next", "other-take", "other-hide"]) byId(name, HTMLElement).hidden = !isShown;
}

/** @param {string | null} figure @param {boolean} opens */
function choose(figure, opens) {
  const found = view?.figures.find((one) => one.id === figure) ?? null;
  chosen = found?.id ?? null;
  score.select(chosen, opens && document.activeElement?.closest("#music") !== null);
  figurePanel.show(found);
  if (opens && found) openPanel("figure");
}

/** @param {1 | -1} by */
function step(by) {
  const figures = view?.figures ?? [];
  if (!figures.length) return;
  const at = figures.findIndex((figure) => figure.id === chosen);
  const next = at < 0 ? (by > 0 ? 0 : figures.length - 1) : (at + by + figures.length) % figures.length;
  choose(figures[next].id, true);
  score.select(chosen, true);
}

/** Requests wait for those before them, so that none is lost and each is about what is shown. */
let queue = Promise.resolve();
let waiting = 0;

/**
 * Send a request that gives an arrangement, and show it. What is sent is asked for when its turn has come.
 * @param {string} path @param {string} method @param {() => unknown} [json] @param {() => string} [done]
 */
function send(path, method, json, done) {
  waiting += 1;
  music.setAttribute("aria-busy", "true");
  queue = queue.then(() => sent(path, method, json, done)).finally(() => {
    waiting -= 1;
    music.setAttribute("aria-busy", String(waiting > 0));
  });
  return queue;
}

/** @type {typeof send} */
async function sent(path, method, json, done) {
  const started = performance.now();
  try {
    const words = done?.();
    const next = await ask(`arrangements/${id}${path}${sheet()}`, { method, json: json?.() });
    const here = document.activeElement?.id;
    show(next);
    if (here && document.activeElement?.id !== here) document.getElementById(here)?.focus();
    music.dataset.tookMs = (performance.now() - started).toFixed(0);
    if (words) announce(words);
  } catch (error) {
    announce(error instanceof Error ? error.message : String(error));
    if (view) setting.show(view.setting);
    if (error instanceof ApiError && error.status === 409) void reload();
  }
}

function reload() {
  return send("", "GET");
}

/** @param {import("./figure.js").Wish} wish */
function decide(wish) {
  if (wish.other) chosen = wish.other;
  return send("/decisions", "POST", () => ({ at: view?.step.at, ...wish }));
}

/** @param {"undo" | "redo"} kind */
function travel(kind) {
  return send(`/${kind}`, "POST", () => ({ at: view?.step.at }), () => (kind === "undo" ? say("page-stand-undone", { what: view?.step.undoes ?? "" }) : say("page-stand-redone", { what: view?.step.redoes ?? "" })));
}

/** @param {Partial<import("../types.d.ts").SettingView>} wanted */
function set(wanted) {
  return send("/setting", "PUT", () => {
    const { beat, ...now } = /** @type {ArrangementView} */ (view).setting;
    return { at: view?.step.at, ...now, ...wanted };
  });
}

/** @param {"figure" | "setting"} which */
function openPanel(which) {
  for (const name of ["figure", "setting"]) {
    const tab = byId(`tab-${name}`, HTMLElement);
    tab.setAttribute("aria-selected", String(name === which));
    tab.tabIndex = name === which ? 0 : -1;
    byId(`pane-${name}`, HTMLElement).hidden = name !== which;
  }
  panel.classList.add("open");
}

function loopFigure() {
  const figure = view?.figures.find((one) => one.id === chosen);
  if (transport.loop || !figure || !view) {
    if (!transport.loop) announce(say("page-stand-loop-how"));
    else transport.setLoop(null, []);
    return;
  }
  const bar = view.bar_numbers.indexOf(figure.bar);
  transport.setLoop([Math.max(0, bar - 1), Math.min(view.bar_numbers.length - 1, bar + 1)], view.bar_numbers);
}

/** @param {number | null} wanted */
function beside(wanted) {
  seed = wanted;
  return reload();
}

async function takeOther() {
  const wanted = seed;
  seed = null;
  if (wanted !== null) await set({ seed: wanted });
}

/** @param {number} by */
function resize(by) {
  size = Math.min(STAFF_STEPS.length - 1, Math.max(0, size + by));
  localStorage.setItem(STORED_SIZE, String(size));
  void reload();
}

transport.toggleLoop = loopFigure;
byId("undo", HTMLElement).addEventListener("click", () => void travel("undo"));
byId("redo", HTMLElement).addEventListener("click", () => void travel("redo"));
byId("smaller", HTMLElement).addEventListener("click", () => resize(-1));
byId("larger", HTMLElement).addEventListener("click", () => resize(1));
byId("other-show", HTMLElement).addEventListener("click", () => void beside((view?.setting.seed ?? 0) + 1));
byId("other-next", HTMLElement).addEventListener("click", () => void beside((seed ?? 0) + 1));
byId("other-take", HTMLElement).addEventListener("click", () => void takeOther());
byId("other-hide", HTMLElement).addEventListener("click", () => void beside(null));
byId("copy", HTMLFormElement).addEventListener("submit", async (event) => {
  event.preventDefault();
  try {
    const name = String(new FormData(byId("copy", HTMLFormElement)).get("name"));
    location.assign(`/stand/${(await ask(`arrangements/${id}/copy`, { method: "POST", json: { name } })).id}`);
  } catch (error) {
    announce(error instanceof Error ? error.message : String(error));
  }
});
byId("close-panel", HTMLElement).addEventListener("click", () => panel.classList.remove("open"));
for (const name of /** @type {const} */ (["figure", "setting"])) {
  const tab = byId(`tab-${name}`, HTMLElement);
  tab.addEventListener("click", () => openPanel(name));
  tab.addEventListener("keydown", (event) => {
    if (event.key !== "ArrowLeft" && event.key !== "ArrowRight") return;
    const other = name === "figure" ? "setting" : "figure";
    openPanel(other);
    byId(`tab-${other}`, HTMLElement).focus();
  });
}

listenForKeys([
  { keys: [" "], shown: say("page-keycap-space"), words: say("page-stand-key-play"), act: () => void transport.toggle() },
  { keys: ["ArrowRight"], shown: "→", words: say("page-stand-key-next"), act: () => step(1) },
  { keys: ["ArrowLeft"], shown: "←", words: say("page-stand-key-before"), act: () => step(-1) },
  { keys: ["k"], shown: "K", words: say("page-stand-key-keep"), act: () => figurePanel.keep() },
  { keys: ["x", "Delete"], shown: "X", words: say("page-stand-key-leave-out"), act: () => figurePanel.leaveOut() },
  { keys: ["h"], shown: "H", words: say("page-stand-key-hear"), act: () => figurePanel.hear() },
  { keys: ["r"], shown: "R", words: say("page-stand-key-alternatives"), act: () => { openPanel("figure"); figurePanel.toAlternatives(); } },
  { keys: ["u", "Ctrl+z"], shown: `U ${say("page-keycap-control")}+Z`, words: say("page-stand-key-undo"), act: () => void travel("undo") },
  { keys: ["y", "Ctrl+Shift+z", "Ctrl+y"], shown: `Y ${say("page-keycap-control")}+Y`, words: say("page-stand-key-redo"), act: () => void travel("redo") },
  { keys: ["p"], shown: "P", words: say("page-stand-key-plain"), act: () => transport.setWhat("plain") },
  { keys: ["o"], shown: "O", words: say("page-stand-key-ornamented"), act: () => transport.setWhat("ornamented") },
  { keys: ["t"], shown: "T", words: say("page-stand-key-in-turn"), act: () => transport.setWhat("in-turn") },
  { keys: ["l"], shown: "L", words: say("page-stand-key-loop"), act: loopFigure },
  { keys: ["["], shown: "[ ]", words: say("page-key-slower-faster"), act: () => transport.nudgeTempo(-4) },
  { keys: ["]"], words: say("page-key-faster"), act: () => transport.nudgeTempo(4) },
  { keys: ["c"], shown: "C", words: say("page-stand-key-count-in"), act: () => byId("count-in", HTMLInputElement).click() },
  { keys: ["b"], shown: "B", words: say("page-stand-key-band"), act: () => transport.toggleBand() },
  { keys: ["1"], shown: "1 – 5", words: say("page-key-level"), act: () => setting.setLevel(1) },
  ...[2, 3, 4, 5].map((level) => ({ keys: [String(level)], words: say("page-key-level-number", { level }), act: () => setting.setLevel(level) })),
  { keys: ["s"], shown: "S", words: say("page-stand-key-setting"), act: () => { openPanel("setting"); byId("tab-setting", HTMLElement).focus(); } },
  { keys: ["v"], shown: "V", words: say("page-stand-key-version"), act: () => void beside(seed === null ? (view?.setting.seed ?? 0) + 1 : null) },
  { keys: ["m"], shown: "M", words: say("page-stand-key-lesson"), act: () => location.assign(`/lesson/for/${id}`) },
  { keys: ["-"], shown: "− +", words: say("page-key-smaller-larger"), act: () => resize(-1) },
  { keys: ["+", "="], words: say("page-key-larger"), act: () => resize(1) },
  { keys: ["Escape"], shown: say("page-keycap-escape"), words: say("page-key-close-panel"), act: () => panel.classList.remove("open") },
]);

let width = score.widthMm, settling = 0;
new ResizeObserver(() => {
  if (score.widthMm === width) return;
  width = score.widthMm;
  clearTimeout(settling);
  settling = window.setTimeout(() => void reload(), 200);
}).observe(music);

void reload();
