/** Small helpers for building and finding elements. */

/**
 * The element with an id.
 * @template {HTMLElement} T
 * @param {string} id
 * @param {new (...args: any[]) => T} kind
 * @returns {T}
 */
export function byId(id, kind) {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`#${id} is missing`);
  return found;
}

/**
 * A new element. Attributes that are functions become listeners, `true` an empty attribute; false and null are left out.
 * @template {keyof HTMLElementTagNameMap} K
 * @param {K} tag
 * @param {Record<string, unknown>} [attributes]
 * @param {...(Node | string | null)} children
 * @returns {HTMLElementTagNameMap[K]}
 */
export function el(tag, attributes = {}, ...children) {
  const made = document.createElement(tag);
  setAll(made, attributes);
  for (const child of children) if (child !== null) made.append(child);
  return made;
}

const SVG = "http://www.w3.org/2000/svg";

/**
 * A new SVG element.
 * @template {keyof SVGElementTagNameMap} K
 * @param {K} tag
 * @param {Record<string, unknown>} [attributes]
 * @param {...Node} children
 * @returns {SVGElementTagNameMap[K]}
 */
export function svgEl(tag, attributes = {}, ...children) {
  const made = document.createElementNS(SVG, tag);
  setAll(made, attributes);
  made.append(...children);
  return made;
}

/** @param {Element} made @param {Record<string, unknown>} attributes */
function setAll(made, attributes) {
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") made.addEventListener(name, /** @type {EventListener} */ (value));
    else if (value === true) made.setAttribute(name, "");
    else if (value !== false && value !== null && value !== undefined) made.setAttribute(name, String(value));
  }
}

/**
 * An SVG document as an element of this page.
 * @param {string} text
 * @returns {SVGSVGElement}
 */
export function svgOf(text) {
  const root = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  return /** @type {SVGSVGElement} */ (/** @type {unknown} */ (document.importNode(root, true)));
}

let silence = 0;

/**
 * Put words where they are seen and read out.
 * @param {string} words
 */
export function announce(words) {
  byId("said", HTMLElement).textContent = words;
  clearTimeout(silence);
  silence = window.setTimeout(() => { byId("said", HTMLElement).textContent = ""; }, 6000);
}
