// Listen: what is sent, to which set; then both to be heard, one in the other's place at the same instant.
import {dropProgramme, get, recording} from './api.js';
import {on} from './book.js';
import {byId, make, say} from './ink.js';
import {player} from './player.js';
import {manner} from './work.js';

export function listening() {
  const what = make('select', {id: 'listen-what'}), set = make('select', {id: 'listen-set'}), said = make('span', {class: 'said'});
  const file = make('input', {type: 'file', accept: '.wav,audio/wav', class: 'quiet', tabIndex: -1, 'aria-label': 'A recording to send'});
  const choose = make('button', {type: 'button', onclick: () => file.click()}, 'Bring a WAV …');
  choose.title = 'Or drop one here; it is kept in the folder of the build';
  const more = make('div', {class: 'choice'}, make('span', {class: 'pair'}, make('label', {for: 'listen-what'}, 'Send'), what), choose, file,
    make('span', {class: 'pair'}, make('label', {for: 'listen-set'}, 'to a'), set), said);
  file.addEventListener('change', () => { take(file.files[0]); file.value = ''; });
  const room = byId('listen'); // what is dropped elsewhere is a capture
  room.addEventListener('dragover', event => { event.preventDefault(); event.stopPropagation(); more.setAttribute('data-over', ''); });
  room.addEventListener('dragleave', () => more.removeAttribute('data-over'));
  room.addEventListener('drop', event => {
    event.preventDefault();
    event.stopPropagation();
    more.removeAttribute('data-over');
    if (event.dataTransfer?.files[0]) take(event.dataTransfer.files[0]);
  });
  const list = async picked => {
    const told = await get('/api/programmes'), before = picked ?? what.value;
    what.replaceChildren(...told.recordings.map(name => make('option', {value: name}, name)),
      make('option', {value: ''}, 'an invented programme'));
    what.value = before && told.recordings.includes(before) ? before : told.recordings.length && picked === undefined && !listed ? told.recordings[0] : '';
    if (!listed) set.replaceChildren(...told.sets.map(s => make('option', {value: s.word}, s.words)));
    listed = true;
  };
  let listed = false;
  const take = async one => {
    said.textContent = `${one.name} is being kept …`;
    try {
      const kept = await dropProgramme(one);
      await list(kept.name);
      said.textContent = '';
      say(`${kept.name} is ready to be sent`);
    } catch (problem) { said.textContent = /** @type {Error} */ (problem).message; }
  };
  manner('listen', {ask: () => ({programme: what.value, set: set.value}), more,
    slip: told => told.sounds.length ? [player(told.sounds, name => recording(`/api/work/${told.id}/${name}.wav`))] : []});
  let digest = null;
  on('state', state => { if (state.digest !== digest || !listed) { digest = state.digest; list(); } });
}
