// What the builder wants, in the builder's own words; and what was changed.
import {post} from './api.js';
import {book, on, takeState, write} from './book.js';
import {beingWritten, field} from './field.js';
import {byId, make, say} from './ink.js';

export function rooms() {
  on('state', state => {
    intent(state);
    byId('history').replaceChildren(...(state.history.length ? [] : [make('li', {class: 'pending'}, 'Nothing yet.')]), ...state.history.map(h => make('li', {},
      make('span', {class: 'when'}, `${h.when} `), `${h.path}: `, make('s', {}, h.before || 'nothing'), ` → ${h.after || 'nothing'}`,
      h.how === 'written' ? '' : ` (${h.how})`)));
    byId('undo').disabled = !state.undo;
    byId('undo').title = state.undo;
    byId('redo').disabled = !state.redo;
    byId('redo').title = state.redo;
  });
  byId('undo').addEventListener('click', () => step('undo'));
  byId('redo').addEventListener('click', () => step('redo'));
}

/** @param {import('./api.js').State} state */
function intent(state) {
  const place = byId('intent');
  const focused = place.contains(document.activeElement) ? document.activeElement : null;
  if (beingWritten(place)) return;
  const key = focused?.getAttribute('data-key');
  place.replaceChildren(...state.intent.map(row => make('div', {}, make('dt', {}, row.label),
    make('dd', {}, field(row.label, row.text, (text, seen) => write(row.path, seen, text), {key: row.path, below: '', above: '', bare: true})),
    make('dd', {class: 'reason'}, row.reason))));
  if (key) place.querySelector(`[data-key="${CSS.escape(key)}"]`)?.focus();
}

/** @param {'undo' | 'redo'} way */
export async function step(way) {
  const words = book.state?.[way];
  if (!words) return;
  try {
    takeState(await post(`/api/${way}`, {}));
    say(`${way === 'undo' ? 'undone' : 'done again'}: ${words}`);
  } catch (problem) {
    trouble(/** @type {Error} */ (problem).message);
  }
}

/** Something that concerns the whole page. @param {string} text */
export function trouble(text) {
  const place = byId('troubles');
  place.replaceChildren(...(text ? [make('span', {}, text), make('button', {type: 'button', onclick: () => { trouble(''); byId('help').focus(); }}, 'Close')] : []));
}

/** Something that went well and should be known. @param {string} text */
export function news(text) {
  const place = byId('news');
  place.replaceChildren(...(text ? [make('span', {}, text), make('button', {type: 'button', onclick: () => { news(''); byId('help').focus(); }}, 'Close')] : []));
}
