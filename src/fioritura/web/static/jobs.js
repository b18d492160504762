/** Long work on the server: followed as it goes, and cancelled. */

import { ApiError, ask } from "./api.js";
import { say } from "./words.js";

/** @typedef {import("../types.d.ts").JobView} JobView */

/** @param {JobView} job */
export function isOver(job) {
  return job.state === "done" || job.state === "failed" || job.state === "cancelled";
}

/**
 * Follow a job to its end; `told` hears of each change. Resolves with the job when it is done or cancelled, rejects when it fails.
 * @param {string} id @param {(job: JobView) => void} told
 * @returns {Promise<JobView>}
 */
export function followJob(id, told) {
  return new Promise((resolve, reject) => {
    const stream = new EventSource(`/api/jobs/${id}/events`);
    stream.addEventListener("message", (event) => {
      /** @type {JobView} */
      const job = JSON.parse(event.data);
      told(job);
      if (!isOver(job)) return;
      stream.close();
      if (job.state === "failed") reject(new ApiError(200, { problem: job.problem }));
      else resolve(job);
    });
    stream.addEventListener("error", () => {
      if (stream.readyState === EventSource.CLOSED) reject(new ApiError(0, { problem: say("page-server-forgot") }));
    });
  });
}

/** Stop a job. @param {string} id @returns {Promise<JobView>} */
export function cancelJob(id) {
  return ask(`jobs/${id}`, { method: "DELETE" });
}
