/** The shape of each family of figures: a second sign beside its colour, so that neither is needed alone. */

import { svgEl } from "./dom.js";
import { say } from "./words.js";

/** Paths in a box of −10 to 10; those that begin with "-" are drawn as lines. */
const SHAPES = /** @type {Record<string, string>} */ ({
  "graces": "M-4.5 4.5a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0 -9 0ZM3 -9h2.6v13.5h-2.6Z",
  "turns": "-M-9 1c3 -9 7 -7 9 0s6 9 9 0",
  "neighbours": "M0 -9L9 0L0 9L-9 0Z",
  "passing-notes": "-M-8 7h6v-7h6v-7h5",
  "approaches": "-M-7 -7L2 0L-7 7M8 -7v14",
  "runs": "M-9 8L9 -9V8Z",
  "fills": "M-8 -8h16v16h-16Z",
  "anticipations": "M7 -9L-9 0L7 9Z",
  "delays": "M-7 -9L9 0L-7 9Z",
  "inflections": "-M-9 7c9 0 12 -4 16 -14",
  "repetitions": "M-9 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0ZM1 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0Z",
});

/**
 * The path of a family's shape.
 * @param {string} family
 * @returns {SVGPathElement}
 */
export function shapePath(family) {
  const drawn = SHAPES[family] ?? "M-8 0a8 8 0 1 0 16 0a8 8 0 1 0 -16 0Z";
  return svgEl("path", drawn.startsWith("-") ? { d: drawn.slice(1), class: "open" } : { d: drawn });
}

/**
 * A family's shape as an icon.
 * @param {string} family
 * @returns {SVGSVGElement}
 */
export function shapeIcon(family) {
  return svgEl("svg", { class: `shape fam-${family}`, viewBox: "-10 -10 20 20", "aria-hidden": "true" }, shapePath(family));
}

/**
 * A family's name in words.
 * @param {string} family
 */
export function familyName(family) {
  const words = family.replaceAll("-", " ");
  return say("page-family-name", { family, name: words[0].toUpperCase() + words.slice(1) });
}
