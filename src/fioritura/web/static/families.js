/** The shape of each family of figures: a second sign beside its colour, so that neither is needed alone. */

import { svgEl } from "./dom.js";

/** @type {Record<string, {name: string, icon: string, is_line: boolean}>} The families, as the server knows them. */
const families = JSON.parse(document.getElementById("families")?.textContent ?? "{}");

/**
 * The path of a family's shape.
 * @param {string} family
 * @returns {SVGPathElement}
 */
export function shapePath(family) {
  const { icon, is_line } = families[family];
  return svgEl("path", is_line ? { d: icon, class: "open" } : { d: icon });
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
  return families[family].name;
}
