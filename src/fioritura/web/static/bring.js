/** Bringing tunes in: files that are dropped or chosen, or ABC that is engraved while it is typed. */

import { ask } from "./api.js";
import { byId, el, svgOf } from "./dom.js";
import { cancelJob, followJob } from "./jobs.js";
import { say } from "./words.js";

/** @typedef {import("./api.js").Problem} Problem @typedef {import("../types.d.ts").Welcome} Welcome @typedef {import("../types.d.ts").SystemView} SystemView */

const PATIENCE_MS = 220;
const ENDINGS = /\.(musicxml|xml|mxl|abc|midi?)$/i;
const MOST_FILES = 100, A_FEW = 3;
const MOST_BYTES = 15 * 1024 * 1024;

const abc = byId("abc", HTMLTextAreaElement), marks = byId("marks", HTMLElement), problem = byId("problem", HTMLElement);
const preview = byId("preview", HTMLElement), take = byId("take", HTMLButtonElement), found = byId("found", HTMLElement);
const drop = byId("drop", HTMLElement);

/** @type {AbortController | null} */
let looking = null;
let waiting = 0;

/** What is chosen above: player, level, idiom, repeats. */
function choices() {
  const data = new FormData(byId("choices", HTMLFormElement));
  return { player: String(data.get("player")), level: Number(data.get("level")), idiom: String(data.get("idiom")), unfolds: data.has("unfolds") };
}

async function look() {
  looking?.abort();
  looking = new AbortController();
  const width = Math.max(60, Math.min(600, (preview.clientWidth * 25.4) / 96));
  try {
    /** @type {import("../types.d.ts").AbcView} */
    const seen = await ask("abc", { method: "POST", json: { text: abc.value, width }, signal: looking.signal });
    showProblem(seen.problem);
    take.disabled = seen.problem !== null;
    preview.classList.toggle("stale", !seen.systems.length);
    if (seen.systems.length) showMusic(seen.systems);
    byId("warnings", HTMLElement).replaceChildren(...seen.warnings.map((words) => el("li", {}, words)));
  } catch (error) {
    if (!(error instanceof DOMException)) showProblem({ problem: error instanceof Error ? error.message : String(error) });
  }
}

/** @param {SystemView[]} systems */
function showMusic(systems) {
  preview.replaceChildren(...systems.map((system) => {
    const svg = svgOf(system.svg);
    svg.setAttribute("role", "img");
    svg.setAttribute("aria-label", say("page-bring-bars-from", { bar: system.first + 1 }));
    return el("div", { class: "system" }, /** @type {any} */ (svg));
  }));
}

/** Say what is wrong, and underline it in the text. @param {Problem | null} wrong */
function showProblem(wrong) {
  problem.classList.toggle("wrong", wrong !== null);
  abc.setAttribute("aria-invalid", String(wrong !== null));
  if (!wrong) {
    problem.textContent = say("page-bring-readable");
    marks.replaceChildren();
    return;
  }
  problem.textContent = wrong.line ? say("page-bring-problem-at", { line: wrong.line, column: wrong.column ?? 1, problem: wrong.problem }) : wrong.problem;
  if (!wrong.line || !wrong.column) return marks.replaceChildren();
  const lines = abc.value.split("\n");
  const at = lines.slice(0, wrong.line - 1).reduce((sum, line) => sum + line.length + 1, 0) + wrong.column - 1;
  const length = Math.max(1, wrong.length ?? 1);
  marks.replaceChildren(abc.value.slice(0, at), el("mark", {}, abc.value.slice(at, at + length) || " "), abc.value.slice(at + length));
}

/** @param {Welcome} welcome */
function showWelcome(welcome) {
  found.replaceChildren(
    ...welcome.tunes.map((tune) => el("li", {}, el("a", { href: `/stand/${tune.arrangement}` }, tune.title), ` – ${say("page-bring-tune-facts", { key: tune.key, metre: tune.metre, bars: tune.bars })}`)),
    ...welcome.problems.map((wrong) => el("li", { class: "wrong" }, wrong.line ? say("page-bring-problem-in", { problem: wrong.problem, line: wrong.line, column: wrong.column ?? 1 }) : wrong.problem)));
  if (welcome.tunes.length === 1 && !welcome.problems.length) location.assign(`/stand/${welcome.tunes[0].arrangement}`);
}

/** Many files, with progress. @param {FormData} body @returns {Promise<Welcome>} */
async function bringMany(body) {
  const words = el("span", {}), bar = el("progress", { "aria-label": say("page-bring-files-read") });
  const started = await ask("tunes/import", { method: "POST", body });
  const stop = el("button", { type: "button", click: () => void cancelJob(started.id) }, say("page-stop"));
  found.replaceChildren(el("li", { class: "importing" }, words, bar, stop));
  const end = await followJob(started.id, (job) => {
    const step = job.steps[0];
    words.textContent = step ? say("page-bring-files-done", { done: step.done, total: step.total }) : say("page-waiting");
    if (step) [bar.max, bar.value] = [step.total, step.done];
  });
  if (end.state === "cancelled") throw new Error(say("page-bring-stopped"));
  return /** @type {any} */ (end.result);
}

/** @param {File[]} files */
async function bring(files) {
  const pathOf = (/** @type {File} */ file) => file.webkitRelativePath || file.name;
  const known = files.filter((file) => ENDINGS.test(file.name))
    .sort((one, other) => pathOf(one).localeCompare(pathOf(other), undefined, { numeric: true })).slice(0, MOST_FILES);
  const skipped = files.length - known.length;
  if (!known.length) {
    found.replaceChildren(el("li", { class: "wrong" }, say("page-bring-no-tunes")));
    return;
  }
  if (known.reduce((sum, file) => sum + file.size, 0) > MOST_BYTES) {
    found.replaceChildren(el("li", { class: "wrong" }, say("page-bring-too-large", { most: MOST_BYTES / 2 ** 20 })));
    return;
  }
  found.replaceChildren(el("li", {}, say("page-bring-reading", { count: known.length })));
  const body = new FormData();
  for (const file of known) body.append("files", file, file.name);
  for (const [name, value] of Object.entries(choices())) body.append(name, String(value));
  try {
    showWelcome(known.length > A_FEW ? await bringMany(body) : await ask("tunes", { method: "POST", body }));
    if (skipped) found.append(el("li", { class: "muted" }, say("page-bring-skipped", { count: skipped })));
  } catch (error) {
    found.replaceChildren(el("li", { class: "wrong" }, error instanceof Error ? error.message : String(error)));
  }
}

abc.addEventListener("input", () => {
  marks.replaceChildren();
  clearTimeout(waiting);
  waiting = window.setTimeout(() => void look(), PATIENCE_MS);
});
abc.addEventListener("scroll", () => { marks.scrollTop = abc.scrollTop; });
take.addEventListener("click", async () => {
  try {
    /** @type {Welcome} */
    const welcome = await ask("tunes/typed", { method: "POST", json: { text: abc.value, ...choices() } });
    if (welcome.problems.length) showProblem(welcome.problems[0]);
    else location.assign(`/stand/${welcome.tunes[0].arrangement}`);
  } catch (error) {
    showProblem({ problem: error instanceof Error ? error.message : String(error) });
  }
});

for (const name of ["files", "folder"]) {
  const input = byId(name, HTMLInputElement);
  input.addEventListener("change", () => void bring([...(input.files ?? [])]));
}
for (const kind of ["dragover", "dragenter"]) drop.addEventListener(kind, (event) => { event.preventDefault(); drop.classList.add("over"); });
drop.addEventListener("dragleave", () => drop.classList.remove("over"));
document.addEventListener("dragover", (event) => event.preventDefault());
document.addEventListener("drop", (event) => {
  event.preventDefault();
  drop.classList.remove("over");
  void bring([...(event.dataTransfer?.files ?? [])]);
});

void look();
