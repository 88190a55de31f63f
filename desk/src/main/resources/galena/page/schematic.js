// The drawing to write on: one stop in the tab order, arrows from part to part, Enter to pick.
import {get} from './api.js';
import {book, on, pick} from './book.js';
import {byId, make} from './ink.js';

/** The drawing as it came. */
let shown = '';

export async function placeSchematic() {
  try {
    const text = await get('/api/schematic');
    if (!text && shown) {
      shown = ''; // the old drawing is of another circuit
      byId('schematic').replaceChildren(make('p', {class: 'pending'}, 'The drawing is being placed; this takes some seconds, once.'));
    }
    if (!text || text === shown) return;
    shown = text;
    const parsed = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
    parsed.setAttribute('role', 'group');
    parsed.setAttribute('aria-label', 'Schematic: arrows go from part to part, Enter picks one');
    byId('schematic').replaceChildren(document.importNode(parsed, true));
    parts().forEach(prepare);
    values();
    mark();
  } catch {
    return; // the server does not answer; the page says so elsewhere
  }
}

/** @returns {SVGGElement[]} */
const parts = () => [...byId('schematic').querySelectorAll('.part')];

/** @param {SVGGElement} part @param {number} index */
function prepare(part, index) {
  part.setAttribute('role', 'button');
  part.setAttribute('tabindex', index === 0 ? '0' : '-1');
  part.addEventListener('click', () => choose(part));
  part.addEventListener('keydown', event => {
    const ways = {ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1]};
    if (event.key === 'Enter' || event.key === ' ') choose(part);
    else if (ways[event.key]) go(part, ways[event.key]);
    else return;
    event.preventDefault();
  });
}

/** @param {SVGGElement} part */
function choose(part) {
  rove(part);
  pick(part.dataset.part ?? '');
}

/** @param {SVGGElement} part */
function rove(part) {
  parts().forEach(other => other.setAttribute('tabindex', other === part ? '0' : '-1'));
}

/** The nearest part in a direction. @param {SVGGElement} from @param {number[]} way */
function go(from, [dx, dy]) {
  const middle = part => {
    const box = part.getBBox();
    return {x: box.x + box.width / 2, y: box.y + box.height / 2};
  };
  const here = middle(from);
  let best = null, least = Infinity;
  for (const part of parts()) {
    const there = middle(part), along = (there.x - here.x) * dx + (there.y - here.y) * dy;
    const aside = Math.abs((there.x - here.x) * dy) + Math.abs((there.y - here.y) * dx);
    if (along > 4 && along + 2.5 * aside < least) [best, least] = [part, along + 2.5 * aside];
  }
  if (!best) return;
  rove(best);
  best.focus();
}

/** Writes the values of the build into the drawing; what is tried is in pencil. */
function values() {
  const state = book.state;
  if (!state) return;
  for (const element of parts()) {
    const part = state.parts.find(p => p.name === element.dataset.part);
    const point = state.points.find(p => p.name === element.dataset.part);
    if (element.dataset.part === 'supply' && state.supply) {
      const kind = element.querySelector('.value');
      if (kind) kind.textContent = state.supply.words;
      element.classList.toggle('pencilled', state.laid.supply !== undefined);
      element.setAttribute('aria-label', `supply, ${state.supply.words}${state.laid.supply !== undefined ? ', in pencil' : ''}`);
      continue;
    }
    if (!part) {
      element.setAttribute('aria-label', point ? `test point ${point.name} at ${point.at}` : element.dataset.part ?? '');
      continue;
    }
    const written = element.querySelector('.value');
    const tried = state.laid.adjustments[part.name] !== undefined;
    if (written) written.textContent = part.shown;
    element.classList.toggle('pencilled', tried);
    element.setAttribute('aria-label', `${part.name}, ${part.noun}, ${part.label}${tried ? ', in pencil' : ''}`);
  }
}

function mark() {
  parts().forEach(part => part.setAttribute('aria-pressed', String(part.dataset.part === book.picked)));
}

export function schematic() {
  let digest = '';
  on('state', state => {
    values();
    if (digest && state.digest !== digest) placeSchematic(); // another circuit, perhaps
    digest = state.digest;
  });
  on('laid', values);
  on('picked', mark);
}
