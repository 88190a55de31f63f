// The margin note of what is picked: its values, why they are so, what they do; and the rule of an adjustment.
import {get} from './api.js';
import {book, lay, on, pick, write} from './book.js';
import {beingWritten, field} from './field.js';
import {byId, make, say} from './ink.js';

/** Part, condition or level that the note tells of. */
let shown = '', asked = 0;

export function margin() {
  on('picked', () => refresh(true));
  on('state', () => refresh(false));
  on('picture', picture => { if (picture.complete) moves(); });
  on('laid', follow);
}

/** @param {boolean} fresh whether another thing was picked */
async function refresh(fresh) {
  const name = book.picked, place = byId('note');
  if (!name) { shown = ''; place.replaceChildren(); return; }
  if (!fresh && beingWritten(place)) return;
  const turn = ++asked;
  const note = await told(name);
  if (turn !== asked || (!fresh && beingWritten(place))) return;
  const focus = !fresh && place.contains(document.activeElement) ? document.activeElement.getAttribute('data-key') : null;
  shown = name;
  place.replaceChildren(...contents(name, note));
  if (focus) place.querySelector(`[data-key="${CSS.escape(focus)}"]`)?.focus();
  if (fresh) say(`Margin note of ${title(name, note)}`);
}

async function told(name) {
  try {
    return name === 'audio' ? {rows: [], moves: []} : await get(`/api/note?of=${encodeURIComponent(name)}`);
  } catch {
    return {rows: [], moves: []}; // a test point, or a part that is gone
  }
}

const title = (name, note) => name === 'audio' ? 'the audio level' : note.noun ? `${name}, ${note.noun}` : name;

/** @param {string} name @param {any} note */
function contents(name, note) {
  const state = /** @type {import('./api.js').State} */ (book.state);
  const part = state.parts.find(p => p.name === name);
  const close = make('button', {type: 'button', 'aria-label': 'Close the note', onclick: () => close_(name)}, '×');
  const inside = [make('h2', {id: 'note-title'}, part ? name : words(name), make('small', {}, part ? note.noun ?? '' : ''), close)];
  if (note.reason) inside.push(make('p', {class: 'reason'}, note.reason));
  if (part?.adjustable) inside.push(rule(part));
  if (name === 'temperature' || name === 'supply') inside.push(...condition(name, state));
  if (name === 'audio') inside.push(...audio(state));
  for (const row of note.rows ?? []) {
    if (part?.adjustable && row.label === 'set') continue;
    inside.push(field(row.label, row.text, (text, seen) => write(row.path, seen, text), {
      key: row.path, below: row.main ? note.below : '', above: row.main ? note.above : '',
    }));
  }
  if (note.tolerance) inside.push(make('p', {class: 'taken'}, `tolerance ${note.tolerance}`));
  if (note.pins?.length) inside.push(make('p', {class: 'pins'}, note.pins.map(p => `${p.pin} on ${p.net}`).join(', ')));
  const point = state.points.find(p => p.name === name);
  if (point) inside.push(make('p', {}, `A test point at ${point.at}${point.probe ? `, for a ${point.probe} probe` : ''}. Readings are noted below, under Measure.`));
  inside.push(make('div', {id: 'moves'}));
  if (note.group) inside.push(make('p', {class: 'group'}, note.group));
  queueMicrotask(() => table(note.moves ?? []));
  return inside;
}

function close_(name) {
  pick('');
  const back = document.querySelector(`[data-part="${CSS.escape(name)}"]`) ?? byId('settings').querySelector('button');
  back?.focus();
}

const words = name => ({temperature: 'Temperature', supply: 'Supply', audio: 'Audio level'})[name] ?? name;

/** A rule from stop to stop with a pencil on it. @param {import('./api.js').Part} part */
function rule(part) {
  const now = book.state?.laid.adjustments[part.name] ?? part.position ?? .5;
  const slide = make('input', {type: 'range', min: 0, max: 100, step: .01, value: now * 100,
    'aria-label': `${part.name}, position in % of travel`, 'data-key': 'rule', 'data-rule': part.name});
  slide.addEventListener('input', () => turn(part, slide.valueAsNumber / 100));
  slide.addEventListener('keydown', event => {
    const step = {ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -10, PageUp: 10}[event.key];
    if (step !== undefined) {
      slide.valueAsNumber = Math.min(100, Math.max(0, Math.round(slide.valueAsNumber + step)));
      turn(part, slide.valueAsNumber / 100);
    } else if (event.key === 'Enter') inkIn(part.name);
    else if (event.key === 'Escape') lay({adjustment: part.name});
    else return;
    event.preventDefault();
  });
  const typed = field('set', part.setText || part.positionWords || '', text => write(part.setPath ?? '', part.setWritten ? part.setText ?? '' : null, text),
    {key: 'set', below: '', above: ''});
  return make('div', {class: 'rule'}, slide, make('div', {class: 'ends', 'aria-hidden': 'true'}, make('span', {}, '0 %'), make('span', {}, '100 %')),
    typed, make('div', {class: 'deed', id: 'deed'}, ...deed(part)));
}

/** @param {import('./api.js').Part} part @param {number} position */
function turn(part, position) {
  if (book.state) book.state.laid.adjustments[part.name] = position;
  lay({adjustment: part.name, position}, problem => say(problem.message));
  byId('deed')?.replaceChildren(...deed(part));
}

/** What to do with a pencil mark. @param {import('./api.js').Part} part */
function deed(part) {
  const tried = book.state?.laid.adjustments[part.name];
  if (tried === undefined) return [];
  return [make('span', {class: 'tried'}, `in pencil: ${percent(tried)}`),
    make('button', {type: 'button', 'data-key': 'ink', onclick: () => inkIn(part.name)}, 'Write it in'),
    make('button', {type: 'button', 'data-key': 'rub', onclick: () => lay({adjustment: part.name})}, 'Take it back')];
}

export const percent = share => `${+(share * 100).toFixed(2)} %`;

/** Writes a pencil mark into the build. @param {string} name */
export async function inkIn(name) {
  const state = book.state, part = state?.parts.find(p => p.name === name), tried = state?.laid.adjustments[name];
  if (!part || tried === undefined) return;
  try {
    const stands = await write(part.setPath ?? '', part.setWritten ? part.setText ?? '' : null, percent(tried));
    say(`${name} stands at ${stands}`);
  } catch (problem) {
    say(/** @type {Error} */ (problem).message);
    byId('deed')?.append(make('p', {class: 'refusal'}, /** @type {Error} */ (problem).message));
  }
}

/** Another page or the server has laid something over the build. */
function follow() {
  const part = book.state?.parts.find(p => p.name === shown);
  if (!part?.adjustable) return;
  const slide = byId('note').querySelector('input[type="range"]');
  const now = book.state?.laid.adjustments[part.name] ?? part.position ?? .5;
  if (slide && slide !== document.activeElement) slide.valueAsNumber = now * 100;
  else if (slide && book.state?.laid.adjustments[part.name] === undefined) slide.valueAsNumber = now * 100;
  byId('deed')?.replaceChildren(...deed(part));
}

/** Temperature and supply are laid over, never written. @param {string} name @param {import('./api.js').State} state */
function condition(name, state) {
  const heat = name === 'temperature';
  const own = heat ? '25 °C' : state.supply?.voltsWords ?? '', laid = heat ? state.laid.temperature : state.laid.supply;
  const now = laid === undefined ? own : heat ? `${+laid.toFixed(1)} °C`.replace('-', '−') : `${+laid.toFixed(3)} V`;
  const ask = text => lay({[name]: text}, problem => { throw problem; });
  const inside = [field(heat ? 'at' : 'volts', now, async text => {
    let refused = null;
    await lay({[name]: text}, problem => { refused = problem; });
    if (refused) throw refused;
  }, {key: name, below: '', above: '', pencil: laid !== undefined})];
  if (laid !== undefined) inside.push(make('div', {class: 'deed'}, make('button', {type: 'button', 'data-key': 'own', onclick: () => ask('')}, `Back to ${own}`)));
  if (!heat) for (const row of state.supply?.rows ?? [])
    inside.push(field(row.label, row.text, (text, seen) => write(row.path, seen, text), {key: row.path, below: '', above: ''}));
  inside.push(make('p', {class: 'taken'}, heat ? 'Laid over the build for all that is predicted; nothing of it is written.'
    : 'The open-circuit voltage is laid over; what is written below stays.'));
  return inside;
}

/** @param {import('./api.js').State} state */
function audio(state) {
  const row = state.intent.find(r => r.path === 'intent.programme.level');
  return row ? [field('level, peak', row.text, (text, seen) => write(row.path, seen, text), {key: row.path, below: '', above: ''}),
    make('p', {class: 'taken'}, row.reason || 'The peak voltage of the programme at the audio source.')]
    : [make('p', {}, 'The intent names no programme level.')];
}

/** Asks again what the picked thing does at these settings. */
async function moves() {
  if (!shown || shown === 'audio') return;
  const name = shown, note = await told(name);
  if (name === shown) table(note.moves ?? []);
}

function table(rows) {
  const place = byId('moves');
  if (!place) return;
  if (!rows.length) { place.replaceChildren(); return; }
  const sorted = [...rows].sort((a, b) => Math.abs(b.hertz) - Math.abs(a.hertz)), most = 4;
  const line = m => make('tr', {}, make('th', {scope: 'row'}, `${m.change.replace(' of travel', '')} ${m.what.replace(shown + ' ', '')}`),
    make('td', {}, m.carrier), ...[m.output, m.second, m.third].map(t => make('td', {}, t.replace(' dB', ''))));
  const sheet = (caption, some) => make('table', {class: 'moves'}, make('caption', {}, caption),
    make('thead', {}, make('tr', {}, make('td'), ...['carrier', 'out, dB', '2f, dB', '3f, dB'].map(h => make('th', {scope: 'col'}, h)))),
    make('tbody', {}, ...some.map(line)));
  const open = place.querySelector('details')?.open ?? false;
  place.replaceChildren(sheet('What a little more of it does, exactly, here', sorted.slice(0, most)),
    ...(sorted.length > most ? [make('details', {open}, make('summary', {}, `${sorted.length - most} more, which do less`),
      sheet('What does less', sorted.slice(most)))] : []));
}
