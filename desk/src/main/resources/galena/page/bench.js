// The bench: captures dropped onto the page and measured, readings noted by hand.
import {drop, get, post} from './api.js';
import {besides} from './beside.js';
import {book, on, takeState} from './book.js';
import {byId, make, say} from './ink.js';

export function bench() {
  const file = make('input', {type: 'file', multiple: true, id: 'captures', class: 'quiet', tabIndex: -1, 'aria-label': 'Captures'});
  const choose = make('button', {type: 'button', onclick: () => file.click()}, 'Choose captures');
  const target = make('div', {class: 'drop'}, choose, make('p', {}, 'or drop them here: delimited text, WAV, IQ, SigMF, frequency logs, one-port sweeps.'), file);
  const captures = make('div', {id: 'captured'});
  file.addEventListener('change', () => { take([...file.files]); file.value = ''; });
  for (const name of ['dragover', 'dragleave', 'drop']) {
    document.addEventListener(name, event => {
      if (!(event instanceof DragEvent) || !event.dataTransfer?.types.includes('Files')) return;
      event.preventDefault();
      target.toggleAttribute('data-over', name === 'dragover');
      if (name === 'drop') take([...event.dataTransfer.files]);
    });
  }
  byId('bench').append(target, make('p', {id: 'kept', class: 'beside'}), captures, noting());
  let listed = false;
  on('state', () => { if (!listed) { listed = true; there(); } });
}

/** Captures that lie in the folder already, each to be looked at again. */
async function there() {
  const told = await get('/api/captures');
  const shownNow = [...byId('captured').querySelectorAll('.slip > h3')].map(h => h.textContent);
  byId('kept').replaceChildren(...told.captures.filter(name => !shownNow.includes(name)).flatMap((name, k) => [k ? ', ' : 'In bench already: ',
    make('button', {type: 'button', class: 'link', onclick: () => again(name)}, name)]));
}

/** @param {string} name */
async function again(name) {
  const place = make('article', {class: 'slip', tabIndex: -1}, make('h3', {}, name), make('p', {class: 'pending'}, 'being measured …'));
  byId('captured').prepend(place);
  place.focus();
  try {
    place.replaceChildren(...shown(await get(`/api/capture?name=${encodeURIComponent(name)}`)));
  } catch (problem) {
    place.replaceChildren(make('h3', {}, name), make('p', {class: 'refusal'}, /** @type {Error} */ (problem).message));
  }
  there();
}

/** @param {File[]} files */
async function take(files) {
  for (const file of files) {
    say(`${file.name} is being measured`);
    const place = make('article', {class: 'slip'}, make('h3', {}, file.name), make('p', {class: 'pending'}, 'being measured …'));
    byId('captured').prepend(place);
    try {
      const report = await drop(file);
      place.replaceChildren(...shown(report));
      say(report.verdict);
    } catch (problem) {
      place.replaceChildren(make('h3', {}, file.name), make('p', {class: 'refusal'}, /** @type {Error} */ (problem).message));
    }
  }
}

function shown(report) {
  const at = points(), audio = make('input', {type: 'text', placeholder: '300 mV', autocomplete: 'off'}), done = make('span', {class: 'said'});
  const file = async () => {
    try {
      const filed = await post('/api/file', {capture: report.name, at: at.value, audio: audio.value});
      done.textContent = filed.count ? `${filed.count} readings are in the log.` : 'They are in the log already.';
      say(done.textContent);
    } catch (problem) { done.textContent = /** @type {Error} */ (problem).message; }
  };
  const over = make('div', {class: 'laid-over'});
  const lay = async () => {
    if (!at.value) { over.replaceChildren(make('p', {class: 'pending'}, 'Say at which test point it was taken, and it is laid over the prediction.')); return; }
    over.replaceChildren(make('p', {class: 'pending'}, 'the prediction with that probe is being computed …'));
    try {
      const told = await get(`/api/beside?capture=${encodeURIComponent(report.name)}&at=${encodeURIComponent(at.value)}&audio=${encodeURIComponent(audio.value)}`);
      over.replaceChildren(...besides(told));
    } catch (problem) { over.replaceChildren(make('p', {class: 'refusal'}, /** @type {Error} */ (problem).message)); }
  };
  at.addEventListener('change', lay);
  audio.addEventListener('change', lay);
  const known = book.state?.points ?? [];
  at.value = report.at || (known.find(p => report.name.includes(p.name))?.name ?? '');
  audio.value = report.audio;
  lay();
  return [make('h3', {}, report.name), make('p', {class: 'lead'}, report.verdict),
    ...(report.findings.length ? [make('ul', {class: 'aside'}, ...report.findings.map(f => make('li', {}, f)))] : []),
    make('div', {class: 'reading'}, make('label', {}, 'taken at', at), make('label', {}, 'audio level then', audio), make('button', {type: 'button', onclick: file}, 'Note these readings'), done),
    over,
    make('details', {}, make('summary', {}, 'All that was measured, and how'),
      make('table', {}, make('caption', {}, `read as ${report.layout}; ${report.interval}`),
        make('tbody', {}, ...report.figures.filter(f => f.known).map(f => make('tr', {}, make('th', {scope: 'row'}, f.label), make('td', {}, f.words, make('small', {}, f.how)))))),
      ...report.plots.map(p => make('figure', {}, make('img', {src: `/api/plot?capture=${encodeURIComponent(report.name)}&which=${p}`, alt: `${report.name}: ${p}`, loading: 'lazy'}))))];
}

function points() {
  return make('select', {'aria-label': 'Test point'}, make('option', {value: ''}, 'no test point'),
    ...(book.state?.points ?? []).map(p => make('option', {value: p.name}, `${p.name}, ${p.at}`)));
}

function noting() {
  const what = make('select', {'aria-label': 'What was read'}), text = make('input', {type: 'text', autocomplete: 'off', 'aria-label': 'Reading'});
  let at = points();
  const place = make('label', {}, 'at', at), refusal = make('p', {class: 'refusal', hidden: true});
  on('state', state => {
    if (what.options.length !== state.kinds.length) what.replaceChildren(...state.kinds.map(k => make('option', {value: k.key}, k.words)));
    if (at.options.length !== state.points.length + 1) { const fresh = points(); at.replaceWith(fresh); at = fresh; }
    hint();
  });
  const hint = () => { text.placeholder = book.state?.kinds.find(k => k.key === what.value)?.example ?? ''; };
  what.addEventListener('change', hint);
  const form = make('form', {class: 'reading', onsubmit: async event => {
    event.preventDefault();
    try {
      takeState(await post('/api/reading', {what: what.value, text: text.value, at: at.value}));
      say(`${what.value} ${text.value} is in the log`);
      text.value = '';
      refusal.hidden = true;
    } catch (problem) {
      refusal.textContent = /** @type {Error} */ (problem).message;
      refusal.hidden = false;
      say(refusal.textContent);
    }
  }}, make('label', {}, 'read by eye', what), make('label', {}, 'value, with ± if known', text), place, make('button', {}, 'Note it'), refusal);
  return form;
}
