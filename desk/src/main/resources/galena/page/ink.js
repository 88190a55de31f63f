// Small hands: making elements, and lines on squared paper.

/**
 * An HTML element.
 * @param {string} tag @param {Object<string, any>} [given] properties; names with a hyphen are attributes
 * @param {...(Node | string)} inside
 * @returns {any}
 */
export function make(tag, given = {}, ...inside) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(given)) {
    if (name === 'data') Object.assign(element.dataset, value);
    else if (name.includes('-') || name === 'for' || name === 'role' || name === 'list') element.setAttribute(name, value);
    else if (name === 'class') element.className = value;
    else element[name] = value;
  }
  element.append(...inside);
  return element;
}

/**
 * An SVG element.
 * @param {string} tag @param {Object<string, any>} [attributes] @param {...(Node | string)} inside
 * @returns {any}
 */
export function draw(tag, attributes = {}, ...inside) {
  const element = document.createElementNS('http://www.w3.org/2000/svg', tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
  element.append(...inside);
  return element;
}

/** @param {{x: number, y: number}[]} points */
export const path = points => 'M' + points.map(p => `${p.x.toFixed(1)} ${p.y.toFixed(1)}`).join('L');

/** Squares of the paper. @param {number} left @param {number} top @param {number} right @param {number} bottom @param {number} side */
export function squares(left, top, right, bottom, side) {
  let d = '';
  for (let x = left; x <= right + .1; x += side) d += `M${x} ${top}V${bottom}`;
  for (let y = top; y <= bottom + .1; y += side) d += `M${left} ${y}H${right}`;
  return draw('path', {class: 'square', d});
}

/** @param {number} x @param {number} y @param {string} text @param {string} [kind] @param {string} [anchor] */
export const letter = (x, y, text, kind = '', anchor = 'start') =>
  draw('text', {x: x.toFixed(1), y: y.toFixed(1), class: kind, 'text-anchor': anchor}, text);

/** A picture's frame: title, a word on its state, the plot. @param {string} id @param {string} title */
export function frame(id, title) {
  const word = make('span'), plot = draw('svg', {class: 'plot', viewBox: '0 0 320 124', role: 'img', 'aria-label': title});
  const stamp = make('p', {class: 'stamp'});
  const root = make('section', {class: 'picture', id, data: {state: 'pending'}}, make('h3', {}, title, word), plot, stamp);
  return {root, word, plot, stamp};
}

/** Says to people who don't see the page what has happened. @param {string} text */
export function say(text) {
  const place = /** @type {HTMLElement} */ (document.getElementById('said'));
  place.textContent = text;
}

/** @param {string} id @returns {any} */
export const byId = id => document.getElementById(id);
