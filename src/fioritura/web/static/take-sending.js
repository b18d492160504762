/** What becomes of a recording: it is sent, listened to, and reported on, or what is wrong with it is said. */

import { ask } from "./api.js";
import { byId } from "./dom.js";
import { cancelJob, followJob } from "./jobs.js";
import { say } from "./words.js";

/** @typedef {import("./take-session.js").Taken} Taken */

const ENDINGS = /\.(wav|flac|mp3|ogg|oga)$/i;

/** Sends recordings and shows what comes of them; `busy` is told when one is being listened to. */
export class Sending {
  /** @param {number} mostBytes @param {(isBusy: boolean) => void} busy */
  constructor(mostBytes, busy) {
    this.mostBytes = mostBytes;
    this.busy = busy;
    /** What was recorded last, to be heard again. @type {Taken | null} */
    this.last = null;
    /** @type {string | null} */
    this.job = null;
    byId("cancel", HTMLElement).addEventListener("click", () => { if (this.job) void cancelJob(this.job); });
  }

  /** Send a recording with what was asked for. @param {Blob} recording @param {Record<string, unknown>} wanted */
  async send(recording, wanted) {
    const body = new FormData();
    body.append("recording", recording, "take");
    for (const [name, value] of Object.entries(wanted)) if (value !== null && value !== "") body.append(name, String(value));
    this.busy(true);
    this.show(say("page-sending-listening"), say("page-sending-listening-about"), true);
    try {
      /** @type {import("../types.d.ts").Started} */
      const started = await ask("takes", { method: "POST", body });
      this.job = started.job.id;
      const done = await followJob(this.job, () => {}).catch((error) => forget(started.take).then(() => { throw error; }));
      if (done.state === "done") return location.assign(`/takes/${started.take}`);
      await forget(started.take);
      this.hide();
    } catch (error) {
      this.show(say("page-sending-failed"), error instanceof Error ? error.message : String(error), false);
    }
    this.job = null;
    this.busy(false);
  }

  /** Whether a file may be a recording; says why not. @param {File} file */
  takes(file) {
    const isSound = ENDINGS.test(file.name) || file.type.startsWith("audio/");
    if (!isSound) this.show(say("page-sending-failed"), say("page-sending-no-recording"), false);
    else if (file.size > this.mostBytes) {
      const size = Math.ceil(file.size / 2 ** 20), most = this.mostBytes / 2 ** 20;
      this.show(say("page-sending-failed"), say("page-sending-too-large", { size, most }), false);
    } else return true;
    return false;
  }

  /** @param {string} title @param {string} words @param {boolean} isBusy */
  show(title, words, isBusy) {
    const box = byId("outcome", HTMLElement);
    box.hidden = false;
    box.classList.toggle("failed", !isBusy);
    byId("outcome-title", HTMLElement).textContent = title;
    byId("outcome-words", HTMLElement).textContent = words;
    byId("outcome-progress", HTMLElement).hidden = !isBusy;
    byId("cancel", HTMLElement).hidden = !isBusy;
    byId("again", HTMLElement).hidden = isBusy;
    byId("playback", HTMLElement).hidden = isBusy || !this.last;
    byId("outcome-title", HTMLElement).focus({ preventScroll: true });
    box.scrollIntoView({ block: "nearest" });
  }

  hide() {
    byId("outcome", HTMLElement).hidden = true;
  }

  /** Play what was recorded last. @param {AudioContext} context */
  playBack(context) {
    if (!this.last) return;
    const { samples, rate } = this.last, buffer = new AudioBuffer({ length: samples.length, sampleRate: rate });
    buffer.copyToChannel(new Float32Array(samples), 0);
    const source = new AudioBufferSourceNode(context, { buffer });
    source.connect(context.destination);
    source.start();
  }
}

/** Have a recording deleted that is not reported on, if it is still there. @param {string} take */
function forget(take) {
  return ask(`takes/${take}`, { method: "DELETE" }).catch(() => {});
}
