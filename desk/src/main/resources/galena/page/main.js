// Wires the page: who hears what, and which key does what.
import {listen} from './api.js';
import {answer} from './answer.js';
import {bench} from './bench.js';
import {book, fetchAll, on, takeLaid, takePicture, takeState} from './book.js';
import {byId, say} from './ink.js';
import {listening} from './listening.js';
import {loop} from './loop.js';
import {margin} from './margin.js';
import {pictures} from './pictures.js';
import {proposing} from './proposing.js';
import {reconciling} from './reconciling.js';
import {news, rooms, step, trouble} from './rooms.js';
import {placeSchematic, schematic} from './schematic.js';
import {settings} from './settings.js';
import {shelf} from './shelf.js';
import {takeJob, work} from './work.js';

paper(localStorage.getItem('paper') ?? (matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light'));
answer(); pictures(); loop(); margin(); settings(); schematic(); rooms(); proposing(); listening(); reconciling(); work(); bench();
const moved = await shelf();

let broken = '';
on('state', state => {
  byId('name').textContent = state.name;
  byId('folder').textContent = `${state.folder}/build.yaml`;
  document.title = `${state.name} — notebook`;
  const now = state.problems.map(p => `${p.place}  ${p.path ? p.path + ': ' : ''}${p.found}\n  ${p.rule} ${p.remedy}`).join('\n');
  if (now !== broken) trouble(now && `The file on the disk can't be used; shown is what it was before.\n${now}`);
  broken = now;
});

await fetchAll();
listen({
  again: () => { moved(); fetchAll(); placeSchematic(); },
  shown: moved,
  state: takeState,
  picture: takePicture,
  laid: takeLaid,
  job: takeJob,
  schematic: () => placeSchematic(),
  outside: told => {
    if (!told.changes.length) return;
    news(`Another program changed build.yaml; it is taken over: ${told.changes.join('; ')}`);
  },
}, there => {
  if (!there) trouble('Galena does not answer: shown is the last that it said. Is galena open still running?');
  else if (byId('troubles').textContent.startsWith('Galena does not')) trouble('');
});

byId('help').addEventListener('click', () => byId('keys').showModal());
byId('ink').addEventListener('click', () => paper(document.documentElement.dataset.paper === 'dark' ? 'light' : 'dark', true));

/** @param {string} kind @param {boolean} [keep] */
function paper(kind, keep) {
  document.documentElement.dataset.paper = kind;
  byId('ink').setAttribute('aria-pressed', String(kind === 'dark'));
  if (keep) localStorage.setItem('paper', kind);
}

document.addEventListener('keydown', event => {
  const typing = event.target instanceof HTMLInputElement && event.target.type === 'text';
  const key = event.key.toLowerCase();
  if ((event.ctrlKey || event.metaKey) && !typing && (key === 'z' || key === 'y')) {
    event.preventDefault();
    step(key === 'y' || event.shiftKey ? 'redo' : 'undo');
  } else if (event.altKey && key === 'm') {
    event.preventDefault();
    byId('margin').focus();
  } else if (event.altKey && key === 's') {
    event.preventDefault();
    byId('schematic').querySelector('[tabindex="0"]')?.focus();
  }
});
document.documentElement.dataset.ready = 'true';
say('The notebook is open');
