// The one copy of what the server has said, and who wants to hear of it.
import {Conflict, get, post} from './api.js';
import {choose} from './conflict.js';

/** @type {{state: import('./api.js').State | null, picture: import('./api.js').Picture | null, picked: string}} */
export const book = {state: null, picture: null, picked: ''};

/** @type {Object<string, ((value: any) => void)[]>} */
const hearers = {state: [], picture: [], picked: [], laid: []};

/** @param {'state' | 'picture' | 'picked' | 'laid'} what @param {(value: any) => void} hear */
export const on = (what, hear) => hearers[what].push(hear);

/** @param {'state' | 'picture' | 'picked' | 'laid'} what @param {any} value */
const tell = (what, value) => hearers[what].forEach(hear => hear(value));

/** An answer older than what is shown is dropped, so that nothing jumps back. @param {import('./api.js').State} state */
export function takeState(state) {
  if (book.state && state.revision < book.state.revision) return;
  book.state = state;
  tell('state', state);
}

/** @param {import('./api.js').Picture} picture */
export function takePicture(picture) {
  const shown = book.picture;
  if (shown && picture.revision < shown.revision) return;
  if (shown && picture.revision === shown.revision && richness(picture) < richness(shown)) return;
  book.picture = picture;
  tell('picture', picture);
  document.documentElement.dataset.drawn = String(picture.revision);
}

/** Of one revision the carrier comes first, then the curve, then the windows. @param {import('./api.js').Picture} p */
const richness = p => (p.modulation.state === 'pending' ? 0 : 1) + (p.complete ? 2 : 0);

/** @param {{revision: number, laid: import('./api.js').Laid}} told */
export function takeLaid(told) {
  if (!book.state || told.revision < book.state.revision) return;
  book.state.laid = told.laid;
  tell('laid', told.laid);
}

export async function fetchAll() {
  takeState(await get('/api/state'));
  takePicture(await get('/api/picture'));
}

/** @param {string} name of a part or condition; empty for none */
export function pick(name) {
  book.picked = name;
  tell('picked', name);
}

let asked = null, busy = false;

/**
 * Lays something over the build. While one question is on its way, only the newest of those behind it is kept.
 * @param {object} change @param {(problem: Error) => void} [refused]
 */
export async function lay(change, refused) {
  asked = {change, refused};
  if (busy) return;
  busy = true;
  while (asked) {
    const next = asked;
    asked = null;
    try {
      takePicture(await post('/api/lay', next.change));
    } catch (problem) {
      next.refused?.(/** @type {Error} */ (problem));
    }
  }
  busy = false;
}

/**
 * Writes one value into the build file. Where it was changed elsewhere meanwhile, the builder is asked which shall stand.
 * @param {string} path @param {string | null} seen @param {string | null} text
 * @returns {Promise<string | null>} what stands there now
 */
export async function write(path, seen, text) {
  try {
    takeState(await post('/api/write', {path, seen, text}));
    return text;
  } catch (problem) {
    if (!(problem instanceof Conflict)) throw problem;
    const theirs = problem.told.theirs ?? null, choice = await choose(problem.told);
    if (choice === 'mine') return write(path, theirs, text);
    if (choice !== 'theirs') throw problem;
    takeState(await get('/api/state'));
    return theirs;
  }
}
