/** Students: names, how many takes each has, adding, renaming and removing. */

import { ask } from "./api.js";
import { announce, byId, el } from "./dom.js";
import { language, say } from "./words.js";

/** @typedef {import("../types.d.ts").StudentView} StudentView */

const list = byId("students", HTMLElement), name = byId("name", HTMLInputElement);
const naming = byId("naming", HTMLDialogElement), removing = byId("removing", HTMLDialogElement);

async function show() {
  /** @type {[StudentView[], import("../types.d.ts").TakeSummary[]]} */
  const [students, takes] = await Promise.all([ask("students"), ask("takes")]);
  const others = takes.filter((take) => take.student_id === null);
  byId("none", HTMLElement).hidden = students.length + others.length > 0;
  list.replaceChildren(...students.map(card), ...(others.length ? [el("article", { class: "card tune" },
    el("h2", {}, el("a", { href: "/students/0" }, say("page-students-nobody"))), el("p", { class: "muted" }, counted(others.length)))] : []));
  list.setAttribute("aria-busy", "false");
}

/** @param {StudentView} student */
function card(student) {
  const last = student.last_at ? new Date(student.last_at).toLocaleDateString(language, { dateStyle: "long" }) : "";
  return el("article", { class: "card tune" },
    el("h2", {}, el("a", { href: `/students/${student.id}` }, student.name)),
    el("p", { class: "muted" }, last ? say("page-students-takes-last", { count: student.takes, day: last }) : counted(student.takes)),
    el("div", { class: "row" },
      el("button", { type: "button", "aria-label": say("page-students-rename-name", { name: student.name }), click: () => rename(student) }, say("page-students-rename")),
      el("button", { type: "button", class: "quiet", "aria-label": say("page-remove-name", { name: student.name }), click: () => remove(student) }, say("page-remove"))));
}

/** @param {number} count */
function counted(count) {
  return say("page-students-takes", { count });
}

/** @param {StudentView} student */
function rename(student) {
  const field = /** @type {HTMLInputElement} */ (naming.querySelector("input"));
  field.value = student.name;
  asked(naming, () => ask(`students/${student.id}`, { method: "PATCH", json: { name: field.value } }));
}

/** @param {StudentView} student */
function remove(student) {
  byId("removing-name", HTMLElement).textContent = student.name;
  byId("removing-count", HTMLElement).textContent = say("page-students-removed-too", { count: student.takes });
  asked(removing, () => ask(`students/${student.id}`, { method: "DELETE" }));
}

/** @param {HTMLDialogElement} dialog @param {() => Promise<unknown>} act */
function asked(dialog, act) {
  dialog.returnValue = "";
  dialog.showModal();
  dialog.addEventListener("close", () => { if (dialog.returnValue === "ok") void done(act); }, { once: true });
}

/** @param {() => Promise<unknown>} act */
async function done(act) {
  try {
    await act();
    await show();
  } catch (error) {
    announce(error instanceof Error ? error.message : String(error));
  }
}

byId("add", HTMLFormElement).addEventListener("submit", (event) => {
  event.preventDefault();
  void done(async () => {
    await ask("students", { method: "POST", json: { name: name.value } });
    name.value = "";
    name.focus();
  });
});

void done(async () => {});
