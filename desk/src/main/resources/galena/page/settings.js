// How everything is set, a line each; a line opens its note.
import {book, lay, on, pick} from './book.js';
import {byId, make} from './ink.js';
import {inkIn, percent} from './margin.js';

export function settings() {
  for (const what of ['state', 'laid', 'picked']) on(/** @type {any} */ (what), show);
  on('picture', show);
}

function show() {
  const state = book.state;
  if (!state) return;
  const laid = state.laid;
  const lines = state.parts.filter(p => p.adjustable).map(part => {
    const tried = laid.adjustments[part.name];
    return line(part.name, part.name, part.label, tried === undefined ? part.positionWords ?? '' : percent(tried), tried !== undefined);
  });
  const level = state.intent.find(r => r.path === 'intent.programme.level');
  if (level) lines.push(line('audio', 'audio', 'peak level', level.text, false));
  if (state.supply) lines.push(line('supply', 'supply', state.supply.words,
    laid.supply === undefined ? state.supply.voltsWords : `${+laid.supply.toFixed(3)} V`, laid.supply !== undefined));
  lines.push(line('temperature', 'at', 'temperature of everything', laid.temperature === undefined ? '25 °C'
    : `${+laid.temperature.toFixed(1)} °C`.replace('-', '−'), laid.temperature !== undefined));
  const focus = byId('settings').contains(document.activeElement) ? document.activeElement?.getAttribute('data-name') : null;
  byId('settings').replaceChildren(...lines);
  if (focus) byId('settings').querySelector(`[data-name="${CSS.escape(focus)}"]`)?.focus();
  pencil(laid);
}

/** @param {string} name @param {string} what @param {string} kind @param {string} set @param {boolean} tried */
function line(name, what, kind, set, tried) {
  return make('li', {}, make('button', {type: 'button', 'aria-pressed': String(book.picked === name), 'data-name': name, title: kind, onclick: () => pick(name)},
    what ? `${what} ` : '', make('span', {class: tried ? 'set pencilled' : 'set'}, set, tried ? make('span', {class: 'quiet'}, ' in pencil') : '')));
}

/** @param {import('./api.js').Laid} laid */
function pencil(laid) {
  const place = byId('pencil'), names = Object.keys(laid.adjustments);
  const any = names.length > 0 || laid.temperature !== undefined || laid.supply !== undefined;
  place.hidden = !any;
  if (!any) { place.replaceChildren(); return; }
  const all = async () => { for (const name of names) await inkIn(name); };
  place.replaceChildren('What is underlined with dots is tried, not written.',
    ...(names.length > 1 ? [make('button', {type: 'button', onclick: all}, 'Write all in')] : []),
    make('button', {type: 'button', onclick: () => lay({})}, 'Take all back'));
}
