// The carrier in large letters, and how the build stands to its intent.
import {post} from './api.js';
import {on, takePicture} from './book.js';
import {byId, make, say} from './ink.js';

/** A carrier that has stood so long, ms, is told to those who don't see it. */
const SETTLED = 900;

let told = '', settling = 0;

/** Nearer than this, Hz, there is nothing to trim. */
const NEAR = 20;

const MARKS = {meets: '✓', fails: '✗', may_fail: '✗', unknown: '?'};

export function answer() {
  byId('trim').addEventListener('click', async () => {
    try {
      takePicture(await post('/api/trim', {}));
      say('trimmed, in pencil');
    } catch (problem) {
      say(/** @type {Error} */ (problem).message);
      byId('state').textContent = /** @type {Error} */ (problem).message;
    }
  });
  on('picture', show);
}

/** @param {import('./api.js').Picture} picture */
function show(picture) {
  byId('carrier').textContent = picture.oscillates && picture.carrier ? picture.carrier.words : 'silent';
  settle(byId('carrier').textContent);
  byId('typical').textContent = picture.oscillates ? 'with typical parts' : '';
  byId('window').textContent = picture.state === 'stale' ? 'not those of the settings' : !picture.oscillates ? picture.silence
    : picture.complete ? `${picture.carrier?.window} over tolerances and devices` : 'the window over tolerances and devices follows …';
  const off = picture.carrier && picture.wanted !== undefined ? Math.abs(picture.carrier.value - picture.wanted) : 0;
  byId('trim').hidden = off < NEAR;
  byId('trim').textContent = `Trim to ${picture.wantedWords}`;
  const facts = Object.entries(picture.facts ?? {}).flatMap(([name, words], k) => [k ? ' · ' : '', `${name} `, make('b', {}, words)]);
  byId('facts').replaceChildren(...facts);
  const state = byId('state');
  state.dataset.state = picture.state;
  state.textContent = picture.state === 'stale' ? `Stale: shown is the last that could be solved. ${picture.reason}` : '';
  byId('verdict').replaceChildren(...picture.judgements.map(row));
  byId('notes').replaceChildren(...picture.notes.map(note => make('li', {}, note)));
}

/** Turning moves the carrier many times a second: only where it comes to rest is said. @param {string} words */
function settle(words) {
  clearTimeout(settling);
  if (words === told) return;
  settling = setTimeout(() => {
    if (told) say(`carrier ${words}`);
    told = words;
  }, SETTLED);
}

/** @param {import('./api.js').Picture['judgements'][0]} j */
function row(j) {
  const pending = j.found.endsWith('being computed');
  const found = pending ? 'being computed …' : j.found;
  return make('tr', {data: {outcome: j.outcome}, class: pending ? 'pending' : ''},
    make('td', {class: 'mark'}, make('span', {'aria-hidden': 'true'}, MARKS[j.outcome] ?? '?'), make('span', {class: 'quiet'}, j.words)),
    make('th', {scope: 'row'}, j.item),
    make('td', {}, found, j.remark && !pending ? make('span', {class: 'remark'}, `; ${j.remark}`) : ''),
    make('td', {class: 'remark'}, `wanted ${j.wanted}`));
}
