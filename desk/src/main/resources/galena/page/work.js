// Long work: asked, watched, stopped; its answer pasted in as a slip. The server does it; a page may go and come back.
import {get, post, stop} from './api.js';
import {book, on, takeState} from './book.js';
import {make, say} from './ink.js';
import {stripTable} from './strips.js';

/** @type {Map<string, {root: HTMLElement, line: HTMLElement, slip: HTMLElement, job: import('./api.js').Job | null, pasted: number}>} */
const places = new Map();

/** Of a table, rows that are shown without being asked for. */
const LONG = 14;

/** What is done rather than asked. */
const deeds = ['packet', 'accept'];

/** What a room adds to a question, and what it makes of the answer. @type {Object<string, {ask?: () => object, more?: Node, slip?: (told: any) => Node[]}>} */
const manners = {};

/** @param {string} word @param {{ask?: () => object, more?: Node, slip?: (told: any) => Node[]}} manner */
export function manner(word, manner) {
  manners[word] = manner;
}

export function work() {
  for (const root of document.querySelectorAll('[data-work]')) {
    if (!(root instanceof HTMLElement)) continue;
    const line = make('div', {class: 'work'}), slip = make('div'), more = manners[root.dataset.work ?? '']?.more;
    root.append(...(more ? [more] : []), line, slip);
    places.set(root.dataset.work ?? '', {root, line, slip, job: null, pasted: 0});
  }
  on('state', state => {
    for (const [word, place] of places) {
      place.root.hidden = !state.work.some(w => w.word === word) || (state.readings === 0 && ['compare', 'reconcile', 'accept'].includes(word))
        || (word === 'accept' && !state.jobs.some(job => job.work === 'reconcile' && job.answered));
      const jobs = state.jobs.filter(job => job.work === word);
      place.job = jobs[jobs.length - 1] ?? null;
      show(word);
    }
  });
}

/** @param {import('./api.js').Job} job */
export function takeJob(job) {
  const place = places.get(job.work);
  if (!place) return;
  const ended = place.job?.state === 'running' && job.state !== 'running';
  if (place.job && place.job.id > job.id) return;
  if (place.job?.state !== job.state) get('/api/state').then(takeState); // the loop's marks go by it
  place.job = job;
  if (ended) say(`${job.work}: ${job.said}`);
  show(job.work);
}

/** @param {string} word */
function show(word) {
  const place = places.get(word), state = book.state;
  if (!place || !state) return;
  const question = state.work.find(w => w.word === word)?.question ?? word;
  const job = place.job, open = job && (job.state === 'running' || job.state === 'waiting');
  const focused = place.line.contains(document.activeElement);
  const ask = make('button', {type: 'button', onclick: () => post('/api/work', {word, ...manners[word]?.ask?.()})}, `${deeds.includes(word) ? '' : job?.answered ? 'Ask again: ' : 'Ask: '}${deeds.includes(word) ? question[0].toUpperCase() + question.slice(1) : question}`);
  const halt = job && make('button', {type: 'button', onclick: () => stop(job.id)}, 'Stop');
  place.line.replaceChildren(...(open && job
    ? [make('span', {}, question), make('progress', {max: 1, value: job.share, 'aria-label': question}), make('span', {class: 'said'}, job.said), halt]
    : [ask, ...(job && !job.answered ? [make('span', {class: 'said'}, job.said)] : [])]));
  if (focused) place.line.querySelector('button')?.focus();
  if (job?.answered) paste(place, job);
  else if (!job) { place.slip.replaceChildren(); place.pasted = 0; }
}

async function paste(place, job) {
  if (place.pasted !== job.id) {
    place.pasted = job.id;
    place.slip.replaceChildren(slip(await get(`/api/work/${job.id}`), manners[job.work]?.slip));
  }
  place.slip.querySelector('.old')?.remove();
  if (job.digest !== book.state?.digest && place.slip.firstElementChild)
    place.slip.firstElementChild.prepend(make('p', {class: 'old'}, 'Of the build as it was; it has been changed since.'));
}

/** @param {any} told @param {((told: any) => Node[]) | undefined} more */
function slip(told, more) {
  return make('article', {class: 'slip'}, make('h3', {}, told.title), make('p', {class: 'lead'}, told.lead), ...(more?.(told) ?? []),
    ...(told.links.length ? [make('ul', {}, ...told.links.map(name => make('li', {}, make('a', {href: `/packet/${encodeURIComponent(name)}`, target: '_blank', rel: 'noopener'}, name))))] : []),
    ...told.tables.map(table => table.rows.length > LONG ? make('details', {}, make('summary', {}, table.title), sheet(table, true)) : sheet(table, false)),
    ...(told.strips.length ? [stripTable(told.strips, 'Readings with their uncertainty over the predicted intervals')] : []),
    ...told.drawings.map(d => make('figure', {}, make('img', {src: `/api/work/${told.id}/${d.name.replace(/\.svg$/, '')}.svg`, alt: d.caption, loading: 'lazy'}), make('figcaption', {}, d.caption))),
    ...(told.notes.length ? [make('ul', {class: 'aside'}, ...told.notes.map(n => make('li', {}, n)))] : []));
}

/** @param {any} table @param {boolean} titled whether its title stands elsewhere */
function sheet(table, titled) {
  return make('table', {}, make('caption', {class: titled ? 'quiet' : ''}, table.title),
    make('thead', {}, make('tr', {}, ...table.head.map(h => make(h ? 'th' : 'td', h ? {scope: 'col'} : {}, h)))),
    make('tbody', {}, ...table.rows.map(row => make('tr', {}, ...row.cells.map((cell, k) => make(k ? 'td' : 'th', k ? {} : {scope: 'row'}, cell))))));
}
