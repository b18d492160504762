/** The JSON API (its OpenAPI document: /api/openapi.json). */

import { say } from "./words.js";

/**
 * @typedef {{svg: string, first: number, bars: number}} SystemView
 * @typedef {{note: number, written: string, element: string}} AddedNote
 * @typedef {{id: string, number: number, technique: string, name: string, label: string, family: string, bar: number,
 *   beat: number, reason: string, text: string, how: string, level: number, difficulty: number, is_kept: boolean,
 *   elements: string[], added: AddedNote[]}} FigureView
 * @typedef {{player: string, level: number, idiom: string, feel: string, tempo: number, beat: number, only: string[],
 *   without: string[], seed: number, density: number}} SettingView
 * @typedef {{id: number, tune_id: number, title: string, composer: string, key: string,
 *   step: {at: number, undoes: string, redoes: string}, setting: SettingView, kept_share: number, bar_numbers: number[],
 *   figures: FigureView[], other: FigureView[], other_seed: number | null, left_out: number, systems: SystemView[],
 *   notes: string[]}} ArrangementView
 * @typedef {{id: string, name: string, family: string, reason: string, level: number, difficulty: number, worth: number,
 *   stands: boolean, svg: string}} AlternativeView
 * @typedef {{name: string, sound: string, notes: [number, number, string][]}} LineTime
 * @typedef {{tempo: number, feel: string, starts_at: number, ends_at: number,
 *   bars: {start: number, end: number, bar: number}[], lines: LineTime[], band: Record<string, string>,
 *   remark: string}} HearingView
 * @typedef {{problem: string, line?: number | null, column?: number | null, length?: number}} Problem
 * @typedef {{id: number, title: string, composer: string, key: string, metre: string, bars: number, tags: string[],
 *   source_name: string, changed_at: string, arrangement: number | null,
 *   versions: {id: number, name: string, changed_at: string}[]}} TuneView
 */

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
