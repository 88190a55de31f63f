// Reconcile: what was found is left or accepted; what was accepted can be taken away again.
import {post, stop} from './api.js';
import {on, takeState} from './book.js';
import {byId, make, say} from './ink.js';
import {manner} from './work.js';

export function reconciling() {
  manner('reconcile', {slip: told => [make('div', {class: 'work'}, make('button', {type: 'button', onclick: async () => {
    await stop(told.id);
    say('It is left: nothing was written');
    byId('reconcile').querySelector('button')?.focus();
  }}, 'Leave it'), make('span', {class: 'said'}, 'or accept it below; nothing is written yet.'))]});
  on('state', show);
}

/** @param {import('./api.js').State} state */
function show(state) {
  const place = byId('calibration');
  if (!state.calibrated) { place.replaceChildren(); return; }
  if (place.childElementCount) return;
  const said = make('span', {class: 'said'});
  place.replaceChildren(make('div', {class: 'work accepted'}, make('span', {}, '✓ A calibration is accepted: every prediction on this page rests on it.'),
    make('button', {type: 'button', onclick: async () => {
      try {
        takeState(await post('/api/drop', {}));
        say('The calibration is taken away; it is kept beside its place');
        byId('reconcile').querySelector('button')?.focus();
      } catch (problem) { said.textContent = /** @type {Error} */ (problem).message; }
    }}, 'Take it away again'), said));
}
