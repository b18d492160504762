/** The shelf: titles, tags, removing, and restoring an export. */

import { ask } from "./api.js";
import { announce, byId } from "./dom.js";
import { say } from "./words.js";

const describe = byId("describe", HTMLDialogElement), remove = byId("remove", HTMLDialogElement);
const doubles = byId("doubles", HTMLDialogElement);
const restore = byId("restore", HTMLInputElement);

/** Ask in a dialog; what is done with the answer ends with a fresh page. @param {HTMLDialogElement} dialog @param {() => Promise<unknown>} act */
function asked(dialog, act) {
  dialog.returnValue = "";
  dialog.showModal();
  dialog.addEventListener("close", () => {
    if (dialog.returnValue === "ok") act().then(() => location.reload(), (error) => announce(error.message));
  }, { once: true });
}

document.addEventListener("click", (event) => {
  const button = event.target instanceof Element ? event.target.closest("[data-act]") : null;
  const card = button?.closest("[data-tune]");
  if (!(button instanceof HTMLElement) || !(card instanceof HTMLElement)) return;
  const path = `tunes/${card.dataset.tune}`;
  if (button.dataset.act === "remove-version") {
    byId("remove-name", HTMLElement).textContent = button.dataset.name ?? "";
    asked(remove, () => ask(`arrangements/${button.dataset.version}`, { method: "DELETE" }));
    return;
  }
  if (button.dataset.act === "remove") {
    byId("remove-name", HTMLElement).textContent = card.dataset.title ?? "";
    asked(remove, () => ask(path, { method: "DELETE" }));
    return;
  }
  const form = /** @type {HTMLFormElement} */ (describe.querySelector("form"));
  const title = /** @type {HTMLInputElement} */ (form.elements.namedItem("title"));
  const tags = /** @type {HTMLInputElement} */ (form.elements.namedItem("tags"));
  [title.value, tags.value] = [card.dataset.title ?? "", card.dataset.tags ?? ""];
  asked(describe, () => ask(path, { method: "PATCH", json: { title: title.value, tags: tags.value.split(",") } }));
});

/** Send an export; where some of its tunes stand here, nothing is done before it is said what becomes of them. @param {File} file @param {string} choice */
async function sent(file, choice) {
  announce(say("page-shelf-restoring"));
  const body = new FormData();
  body.append("archive", file);
  body.append("doubles", choice);
  return /** @type {import("../types.js").RestoredView} */ (await ask("restore", { method: "POST", body }));
}

/** @param {number} count @returns {Promise<string>} */
function chosen(count) {
  byId("doubles-count", HTMLElement).textContent = say("page-shelf-doubles-count", { count });
  doubles.returnValue = "";
  doubles.showModal();
  return new Promise((resolve) => doubles.addEventListener("close", () => resolve(doubles.returnValue), { once: true }));
}

restore.addEventListener("change", async () => {
  const file = restore.files?.[0];
  if (!file) return;
  try {
    const found = await sent(file, "ask");
    const choice = found.doubles ? await chosen(found.doubles) : "done";
    if (choice) {
      if (choice !== "done") await sent(file, choice);
      location.assign("/shelf");
    }
  } catch (error) {
    announce(error instanceof Error ? error.message : String(error));
  }
  restore.value = "";
});
