// A folder without a build: an intent, a pattern, and the build is written.
import {Refused, get, post} from './api.js';
import {byId, make} from './ink.js';

document.documentElement.dataset.paper = localStorage.getItem('paper') ?? (matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light');

/** @typedef {{name: string, summary: string, title: string, carrier: string, distance: string, supply: string, parts: number, devices: string[]}} Pattern */

/** Words with people's names as names are written. @param {string} name */
const words = name => name.replace(/-(colpitts|hartley|resonator)/, ' $1').replace(/colpitts|hartley|clapp/, n => n[0].toUpperCase() + n.slice(1)).replace(/^./, c => c.toUpperCase());

/** @type {{folder: string, patterns: Pattern[]}} */
const told = await get('/api/start');
byId('folder').textContent = told.folder;

const WISHES = [
  ['name', 'name', 'title', 'as you call it'],
  ['intent.carrier', 'carrier', 'carrier', 'as 999 kHz: a channel that is free where you live'],
  ['intent.distance', 'distance', 'distance', 'how far off the set stands, as 4 m'],
  ['supply.battery', 'supply', 'supply', 'cells as 6xAA-NiMH or 9V-alkaline, or a voltage as 9 V'],
];
const touched = new Set(), inputs = {};
let picked = told.patterns[0];

byId('wishes').append(...WISHES.map(([path, label, , hint]) => {
  const id = `wish-${label}`;
  const input = inputs[path] = make('input', {type: 'text', id, class: 'inked', autocomplete: 'off', spellcheck: false, 'aria-describedby': `${id}-hint`});
  input.addEventListener('input', () => { touched.add(path); changed(); });
  return make('div', {class: 'wish'}, make('label', {for: id}, label), input, make('span', {class: 'aside', id: `${id}-hint`}, hint));
}));

byId('patterns').append(...told.patterns.map((pattern, k) => {
  const radio = make('input', {type: 'radio', name: 'pattern', value: pattern.name, checked: k === 0, onchange: () => pick(pattern)});
  return make('label', {class: 'pattern'}, radio, make('span', {class: 'what'}, words(pattern.name)),
    make('span', {class: 'summary'}, pattern.summary), make('span', {class: 'aside'}, `${pattern.parts} parts, with ${pattern.devices.join(', ')}`));
}));

/** @param {Pattern} pattern */
function pick(pattern) {
  picked = pattern;
  for (const [path, , key] of WISHES) if (!touched.has(path)) inputs[path].value = pattern[key];
  byId('begin').textContent = `Begin with the ${words(pattern.name).replace(/^(?!Clapp)./, c => c.toLowerCase())}`;
  changed();
  place(pattern);
}

/** The schematic, drawn in the page's own inks. @param {Pattern} pattern */
async function place(pattern) {
  const title = `${words(pattern.name)}, as its values stand for ${pattern.carrier}`;
  try {
    const text = await get(`/api/pattern?of=${encodeURIComponent(pattern.name)}`);
    if (picked !== pattern) return;
    if (!text) {
      byId('seen').replaceChildren(make('figcaption', {}, `${words(pattern.name)}: its schematic is placed once it is begun.`));
      return;
    }
    const svg = document.importNode(new DOMParser().parseFromString(text, 'image/svg+xml').documentElement, true);
    svg.setAttribute('role', 'img');
    svg.setAttribute('aria-label', `Schematic: ${title}`);
    byId('seen').replaceChildren(svg, make('figcaption', {}, title));
  } catch {
    byId('seen').replaceChildren();
  }
}

/** Says what the wishes mean for the values. */
function changed() {
  const other = WISHES.slice(1).filter(([path, , key]) => inputs[path].value.trim() && inputs[path].value.trim() !== picked[key]).map(([, label]) => label);
  const meaning = other.length
    ? `The pattern stands for another ${other.join(' and ')}: values for yours are worked out as soon as it is written, which takes about a minute.`
    : 'The pattern stands for this already: its values can be kept as they are.';
  if (byId('changed').textContent !== meaning) byId('changed').textContent = meaning; // said aloud: once is enough
}

byId('form').addEventListener('submit', async event => {
  event.preventDefault();
  const wanted = Object.fromEntries(WISHES.map(([path]) => [path, inputs[path].value]));
  byId('begin').disabled = true;
  try {
    await post('/api/begin', {pattern: picked.name, ...wanted});
    location.reload();
  } catch (problem) {
    const wrong = problem instanceof Refused ? problem.problems.map(p => p.path) : [];
    for (const [path] of WISHES) inputs[path].setAttribute('aria-invalid', String(wrong.includes(path)));
    inputs[wrong.find(path => inputs[path]) ?? '']?.focus();
    byId('refusal').textContent = /** @type {Error} */ (problem).message;
    byId('refusal').hidden = false;
    byId('begin').disabled = false;
  }
});

pick(picked);
document.documentElement.dataset.ready = 'true';
