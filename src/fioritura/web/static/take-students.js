/** Students: names, how many takes each has, adding, renaming and removing. */

import { ask } from "./api.js";
import { byId, el, say } from "./dom.js";

/** @typedef {{id: number, name: string, takes: number, last_at: string}} StudentView */

const list = byId("students", HTMLElement), name = byId("name", HTMLInputElement);
const naming = byId("naming", HTMLDialogElement), removing = byId("removing", HTMLDialogElement);

async function show() {
  /** @type {[StudentView[], import("./take-report.js").TakeSummary[]]} */
  const [students, takes] = await Promise.all([ask("students"), ask("takes")]);
  const others = takes.filter((take) => take.student_id === null);
  byId("none", HTMLElement).hidden = students.length + others.length > 0;
  list.replaceChildren(...students.map(card), ...(others.length ? [el("article", { class: "card tune" },
    el("h2", {}, el("a", { href: "/students/0" }, "Nobody in particular")), el("p", { class: "muted" }, counted(others.length)))] : []));
  list.setAttribute("aria-busy", "false");
}

/** @param {StudentView} student */
function card(student) {
  const last = student.last_at ? `, the last on ${new Date(student.last_at).toLocaleDateString("en-GB", { dateStyle: "long" })}` : "";
  return el("article", { class: "card tune" },
    el("h2", {}, el("a", { href: `/students/${student.id}` }, student.name)),
    el("p", { class: "muted" }, counted(student.takes) + last),
    el("div", { class: "row" },
      el("button", { type: "button", "aria-label": `Another name for ${student.name}`, click: () => rename(student) }, "Another name"),
      el("button", { type: "button", class: "quiet", "aria-label": `Remove ${student.name}`, click: () => remove(student) }, "Remove")));
}

/** @param {number} count */
function counted(count) {
  return count === 0 ? "No takes kept" : count === 1 ? "One take" : `${count} takes`;
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
  byId("removing-count", HTMLElement).textContent = student.takes ? `${counted(student.takes).toLowerCase()} with ${student.takes === 1 ? "its recording" : "their recordings"} too` : "nothing else";
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
    say(error instanceof Error ? error.message : String(error));
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
