/** The JSON API (its OpenAPI document: /api/openapi.json). */

import { say } from "./words.js";

/** @typedef {{problem: string} & Partial<import("../types.d.ts").Problem>} Problem What is wrong, as the server says it or this page does. */

/** What the server says is wrong. */
export class ApiError extends Error {
  /** @param {number} status @param {Problem} problem */
  constructor(status, problem) {
    super(problem.problem);
    this.status = status;
    this.problem = problem;
  }
}

/**
 * Ask the server.
 * @param {string} path
 * @param {{method?: string, json?: unknown, body?: FormData, signal?: AbortSignal}} [options]
 * @returns {Promise<any>}
 */
export async function ask(path, { method = "GET", json, body, signal } = {}) {
  const answer = await answered(path, {
    method, signal,
    body: body ?? (json === undefined ? undefined : JSON.stringify(json)),
    headers: json === undefined ? {} : { "Content-Type": "application/json" },
  });
  return answer.status === 204 ? null : answer.json();
}

/**
 * A sound from the server.
 * @param {string} path
 * @returns {Promise<ArrayBuffer>}
 */
export async function askSound(path) {
  return (await answered(path, {})).arrayBuffer();
}

/** @param {string} path @param {RequestInit} init */
async function answered(path, init) {
  /** @type {Response} */
  let answer;
  try {
    answer = await fetch(`/api/${path}`, init);
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") throw error;
    throw new ApiError(0, { problem: say("page-server-silent") });
  }
  if (answer.ok) return answer;
  const problem = await answer.json().catch(() => ({ problem: say("page-server-failed", { status: String(answer.status) }) }));
  throw new ApiError(answer.status, problem);
}

/**
 * A query string of what is given.
 * @param {Record<string, string | number | null | undefined>} values
 */
export function query(values) {
  const given = Object.entries(values).filter(([, value]) => value !== null && value !== undefined && value !== "");
  return `?${new URLSearchParams(given.map(([name, value]) => [name, String(value)]))}`;
}
