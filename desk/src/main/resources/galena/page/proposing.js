// Propose: from what the question starts, and what can be done with its answer.
import {post} from './api.js';
import {takeState} from './book.js';
import {byId, make, say} from './ink.js';
import {draw, show} from './shelf.js';
import {manner} from './work.js';

export function proposing() {
  const from = make('select', {id: 'propose-from'}, make('option', {value: 'build'}, 'this build, changed as little as it takes'),
    make('option', {value: 'patterns'}, 'every pattern, by the intent and the drawer alone'));
  const more = make('p', {class: 'choice'}, make('label', {for: 'propose-from'}, 'Starting from '), from);
  manner('propose', {ask: () => ({from: from.value}), more, slip: told => told.build ? [deeds(told.build)] : []});
}

/** @param {string} build its folder */
function deeds(build) {
  draw(); // it may have come to lie there just now
  const said = make('span', {class: 'said'});
  const take = make('button', {type: 'button', class: 'main', onclick: async () => {
    try {
      takeState(await post('/api/take', {build}));
      said.textContent = 'It is in build.yaml now; Undo brings back what was there.';
      byId('carrier-title').scrollIntoView?.({block: 'start'});
      say('The proposal is in build.yaml; Undo takes it back');
    } catch (problem) { said.textContent = /** @type {Error} */ (problem).message; }
  }}, 'Take it into build.yaml');
  return make('div', {class: 'work'}, take,
    make('button', {type: 'button', onclick: () => show(build)}, `Open ${build} beside it`), said);
}
