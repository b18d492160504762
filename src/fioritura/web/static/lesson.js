/** The lesson: a plan that keeps itself on the shelf, the examples that it leads to, and the pack. */

import { ApiError, ask, query } from "./api.js";
import { announce, byId, el, svgOf } from "./dom.js";
import { shapeIcon } from "./families.js";
import { listenForKeys } from "./keys.js";
import { Packing } from "./packing.js";
import { PlanForm } from "./plan.js";
import { say } from "./words.js";

/** @typedef {import("../types.d.ts").LessonView} LessonView @typedef {import("../types.d.ts").ExampleView} ExampleView */

const PATIENCE_MS = 350;
const MM = 25.4 / 96;

const main = byId("main", HTMLElement);
const arrangement = Number(main.dataset.arrangement);
const preview = byId("preview", HTMLElement), previewWords = byId("preview-words", HTMLElement), kept = byId("kept", HTMLElement);

/** @type {LessonView | null} */
let lesson = null;
let waiting = 0;
let isKeeping = false;
/** @type {AbortController | null} */
let looking = null;
/** Changes are kept one after the other, so that each is about the revision that the one before has made. */
let keeping = Promise.resolve();

const form = new PlanForm(JSON.parse(main.dataset.usual ?? "{}"), {
  changed: () => {
    clearTimeout(waiting);
    isKeeping = true;
    kept.textContent = say("page-lesson-keeping");
    waiting = window.setTimeout(() => { void keep(); void look(); }, PATIENCE_MS);
  },
  offer: () => void fetchOffer(),
});
const packing = new Packing(async () => {
  await keep();
  if (!lesson) throw new ApiError(0, { problem: say("page-lesson-unkept") });
  return lesson;
});

/** Width for the music in a place, in millimetres. @param {HTMLElement} place @param {number} columns */
function widthMm(place, columns) {
  return Math.max(60, Math.min(170, Math.floor((place.clientWidth / columns - (columns > 1 ? 32 : 0)) * MM)));
}

/** Keep the plan on the shelf as it stands in the form; the first time as a new lesson. */
function keep() {
  clearTimeout(waiting);
  const plan = form.plan;
  keeping = keeping.then(async () => {
    if (lesson && same(lesson.plan, plan)) return;
    try {
      if (lesson) lesson = await ask(`lessons/${lesson.id}`, { method: "PUT", json: { at: lesson.revision, plan } });
      else {
        lesson = await ask("lessons", { method: "POST", json: { arrangement, plan } });
        history.replaceState(null, "", `/lesson/${/** @type {LessonView} */ (lesson).id}`);
      }
      packing.outdated(/** @type {LessonView} */ (lesson));
    } catch (error) {
      announce(error instanceof Error ? error.message : String(error));
      if (error instanceof ApiError && error.status === 409 && lesson) showLesson(await ask(`lessons/${lesson.id}`));
    }
    showKept();
  });
  return keeping;
}

/** @param {unknown} one @param {unknown} other */
function same(one, other) {
  return JSON.stringify(one) === JSON.stringify(other);
}

function showKept() {
  isKeeping = false;
  kept.textContent = lesson ? say("page-lesson-kept") : say("page-lesson-not-kept");
  byId("remove", HTMLElement).hidden = lesson === null;
}

/** @param {LessonView} found */
function showLesson(found) {
  lesson = found;
  form.show(found.plan);
  showKept();
  packing.find(found);
}

/** Look at the examples that the plan leads to. */
async function look() {
  looking?.abort();
  looking = new AbortController();
  preview.setAttribute("aria-busy", "true");
  const width = widthMm(preview, getComputedStyle(preview).gridTemplateColumns.split(" ").length);
  try {
    /** @type {import("../types.d.ts").PreviewView} */
    const seen = await ask(`lessons/preview${query({ width })}`, { method: "POST", json: { arrangement, plan: form.plan }, signal: looking.signal });
    previewWords.textContent = seen.problem || [say("page-lesson-examples", { count: seen.examples.length }),
      ...seen.left_out.map((one) => say("page-lesson-no-part", { player: one.player, reason: one.reason }))].join(" ");
    previewWords.classList.toggle("wrong", seen.problem !== "");
    packing.allow(seen.problem === "");
    preview.replaceChildren(...seen.examples.map(showExample));
  } catch (error) {
    if (error instanceof DOMException) return;
    previewWords.textContent = error instanceof Error ? error.message : String(error);
  }
  preview.setAttribute("aria-busy", "false");
}

/** @param {ExampleView} one */
function showExample(one) {
  const bars = say(one.first_bar === one.last_bar ? "page-bar-one" : "page-bars-span", { first: one.first_bar, last: one.last_bar });
  const staves = one.svgs.map((text) => {
    const svg = svgOf(text);
    svg.setAttribute("role", "img");
    svg.setAttribute("aria-label", say("page-lesson-example-music", { name: one.name }));
    return svg;
  });
  return el("article", { class: `example fam-${one.family}` }, el("h3", {}, shapeIcon(one.family), `${one.number}  ${one.name}`),
    el("div", { class: "staves" }, .../** @type {any[]} */ (staves)), el("p", {}, `${bars}. ${one.reason}`));
}

async function fetchOffer() {
  try {
    const plan = form.plan, width = widthMm(byId("phrases", HTMLElement), 1) - 8;
    form.showOffer(await ask(`arrangements/${arrangement}/lesson-offer${query({ level: plan.level, language: plan.language, width })}`));
  } catch (error) {
    announce(error instanceof Error ? error.message : String(error));
  }
}

byId("remove", HTMLElement).addEventListener("click", () => {
  const sure = byId("sure", HTMLDialogElement);
  sure.returnValue = "";
  sure.showModal();
  sure.addEventListener("close", () => {
    if (sure.returnValue === "ok" && lesson) ask(`lessons/${lesson.id}`, { method: "DELETE" }).then(() => location.assign(`/lesson/for/${arrangement}`), (error) => announce(error.message));
  }, { once: true });
});
addEventListener("pagehide", () => { if (isKeeping) void keep(); });

listenForKeys([
  { keys: ["b"], shown: "B", words: say("page-lesson-key-build"), act: () => void packing.build() },
  { keys: ["d"], shown: "D", words: say("page-lesson-key-download"), act: () => packing.download() },
  { keys: ["Escape"], shown: say("page-keycap-escape"), words: say("page-lesson-key-stop"), act: () => void packing.cancel() },
  { keys: ["1"], shown: "1 – 5", words: say("page-key-level"), act: () => form.setLevel(1) },
  ...[2, 3, 4, 5].map((level) => ({ keys: [String(level)], words: say("page-key-level-number", { level }), act: () => form.setLevel(level) })),
  { keys: ["s"], shown: "S", words: say("page-lesson-key-stand"), act: () => location.assign(`/stand/${arrangement}`) },
]);

if (main.dataset.lesson) showLesson(await ask(`lessons/${main.dataset.lesson}`));
else showKept();
await fetchOffer();
await look();
