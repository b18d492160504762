/** Building a lesson's pack: progress as it goes, stopping, and the file. */

import { ask } from "./api.js";
import { announce, byId, el } from "./dom.js";
import { cancelJob, followJob, isOver } from "./jobs.js";
import { say } from "./words.js";

/** @typedef {import("../types.d.ts").JobView} JobView @typedef {{id: number, revision: number}} Built */

/** The row at the bottom; `kept` gives the lesson after its last change has been kept. */
export class Packing {
  /** @param {() => Promise<Built>} kept */
  constructor(kept) {
    this.kept = kept;
    /** @type {string | null} */
    this.job = null;
    this.isUnwanted = false;
    this.buildButton = byId("build", HTMLButtonElement);
    this.cancelButton = byId("cancel", HTMLButtonElement);
    this.link = byId("download", HTMLAnchorElement);
    this.words = byId("pack-words", HTMLElement);
    this.progress = byId("progress", HTMLElement);
    this.buildButton.addEventListener("click", () => void this.build());
    this.cancelButton.addEventListener("click", () => void this.cancel());
  }

  async build() {
    if (this.buildButton.disabled) return;
    this.#busy(true);
    this.link.hidden = true;
    this.isUnwanted = false;
    this.words.textContent = say("page-pack-beginning");
    try {
      const lesson = await this.kept();
      const job = await ask(`lessons/${lesson.id}/pack`, { method: "POST" });
      await this.#follow(job, true);
    } catch (error) {
      this.words.textContent = error instanceof Error ? error.message : String(error);
      this.#busy(false);
    }
  }

  /** Stop the work, or have it stopped as soon as it has begun. */
  async cancel() {
    this.isUnwanted = true;
    if (this.job) await cancelJob(this.job);
  }

  download() {
    if (this.link.hidden) announce(say("page-pack-none"));
    else this.link.click();
  }

  /** Whether there is anything to build. @param {boolean} isAllowed */
  allow(isAllowed) {
    if (!this.job) this.buildButton.disabled = !isAllowed;
  }

  /** Take up a pack that is being made, or that has been made of the lesson as it stands. @param {Built} lesson */
  async find(lesson) {
    /** @type {JobView[]} */
    const jobs = await ask("jobs");
    const found = jobs.find((job) => job.about === `lesson ${lesson.id} at ${lesson.revision}` && (!isOver(job) || job.state === "done"));
    if (found) await this.#follow(found, false).catch((error) => { this.words.textContent = error.message; });
  }

  /** The lesson was changed: what has been built is not of it any more. @param {Built} lesson */
  outdated(lesson) {
    if (this.link.hidden || this.link.dataset.of === String(lesson.revision)) return;
    this.link.hidden = true;
    this.#named(false);
    this.words.textContent = say("page-pack-outdated");
  }

  /** @param {JobView} job @param {boolean} isWatched */
  async #follow(job, isWatched) {
    this.job = job.id;
    this.#busy(true);
    try {
      if (this.isUnwanted) await cancelJob(job.id);
      const end = await followJob(job.id, (now) => this.#show(now));
      if (end.state === "cancelled") this.words.textContent = say("page-pack-stopped");
      else this.#done(end, isWatched);
    } finally {
      this.job = null;
      this.#busy(false);
    }
  }

  /** @param {boolean} isBuilt */
  #named(isBuilt) {
    this.buildButton.textContent = isBuilt ? say("page-pack-build-again") : say("page-pack-build");
    this.buildButton.classList.toggle("play", !isBuilt);
  }

  /** @param {boolean} isBusy */
  #busy(isBusy) {
    this.buildButton.disabled = isBusy;
    this.cancelButton.hidden = !isBusy;
    this.progress.hidden = !isBusy;
    if (isBusy) this.progress.replaceChildren();
  }

  /** @param {JobView} job */
  #show(job) {
    if (job.state === "waiting") this.words.textContent = say("page-pack-waiting");
    else if (job.state === "running") this.words.textContent = job.steps.length ? say("page-pack-building") : say("page-pack-reading");
    for (const step of job.steps) {
      let row = this.progress.querySelector(`[data-step="${step.name}"]`);
      if (!row) {
        row = el("label", { "data-step": step.name }, el("span", {}), el("progress", { max: step.total }));
        this.progress.append(row);
      }
      /** @type {HTMLElement} */ (row.firstElementChild).textContent = say("page-pack-step", { step: step.name, done: step.done, total: step.total });
      /** @type {HTMLProgressElement} */ (row.lastElementChild).value = step.done;
    }
  }

  /** @param {JobView} job @param {boolean} isWatched */
  #done(job, isWatched) {
    const made = /** @type {{files: number, bytes: number, revision: number, left_out: {player: string, reason: string}[]}} */ (job.result);
    this.link.href = job.file;
    this.link.dataset.of = String(made.revision);
    this.link.hidden = false;
    this.#named(true);
    this.words.textContent = [say("page-pack-ready", { count: made.files, size: made.bytes / 1e6 }), ...made.left_out.map((one) => say("page-pack-no-part", { player: one.player, reason: one.reason }))].join(" ");
    if (isWatched) this.link.focus();
  }
}
