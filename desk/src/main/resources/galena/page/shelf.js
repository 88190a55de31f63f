// The builds of this folder, and which of them is shown.
import {get, post} from './api.js';
import {byId, make} from './ink.js';
import {trouble} from './rooms.js';

/** @typedef {{folder: string, shown: string, builds: string[]}} Shelf */

/** Draws where else to go; what it answers is asked again whenever another build may have been opened. */
export async function shelf() {
  const first = await draw();
  return async () => {
    const now = await draw();
    if (now.shown !== first.shown) location.reload();
  };
}

/** Draws where else to go. @returns {Promise<Shelf>} */
export async function draw() {
  const told = await get('/api/shelf');
  const others = [...(told.shown ? [''] : []), ...told.builds.filter(b => b !== told.shown)];
  byId('beside').replaceChildren(...(others.length ? ['also here: ', ...others.flatMap((name, k) => [k ? ', ' : '',
    make('button', {type: 'button', class: 'link', onclick: () => show(name)}, name || `the build in ${told.folder}`)])] : []));
  return told;
}

/** Opens another build of this folder; every open page follows. @param {string} build */
export async function show(build) {
  try {
    await post('/api/show', {build});
    location.reload();
  } catch (problem) {
    trouble(/** @type {Error} */ (problem).message);
  }
}
