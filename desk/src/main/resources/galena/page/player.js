// Two recordings that run together; only one of them is let through. Nothing is louder than half of full scale, and it begins softly.
import {make, say} from './ink.js';

const SOFT = 0.12, LOUDEST = 1, TURN = 0.015, LETTERS = ['A', 'B'];

/** @param {{name: string, caption: string}[]} sounds @param {(name: string) => Promise<ArrayBuffer>} fetchOne */
export function player(sounds, fetchOne) {
  /** @type {AudioContext | null} */
  let context = null;
  /** @type {AudioBuffer[]} */
  let buffers = [];
  /** @type {{source: AudioBufferSourceNode, gain: GainNode}[]} */
  let running = [];
  let volume = null, began = 0, from = 0, side = 0, drawing = 0;

  const play = make('button', {type: 'button', class: 'main', onclick: () => running.length ? pause() : start()}, 'Play');
  const place = make('input', {type: 'range', min: 0, max: 1, step: .1, value: 0, 'aria-label': 'Place in the programme, s'});
  const loud = make('input', {type: 'range', min: 0, max: 100, step: 1, value: Math.round(100 * Math.sqrt(SOFT)), 'aria-label': 'Volume'});
  const time = make('span', {class: 'time'}, '0.0 s');
  const sides = sounds.map((sound, k) => {
    const pick = make('input', {type: 'radio', name: 'side', value: sound.name, checked: k === 0, onchange: () => turn(k)});
    return make('label', {class: 'side'}, pick, make('b', {}, LETTERS[k]), ` ${sound.caption}`);
  });
  const root = make('div', {class: 'player', role: 'group', 'aria-label': 'What went in and what was received', data: {side: LETTERS[0], state: 'still'}},
    make('p', {class: 'caution'}, 'Mind your hearing: turn your loudspeaker or headphones down first. The volume here begins low.'),
    make('div', {class: 'sides', role: 'radiogroup', 'aria-label': 'Which is heard'}, ...sides),
    make('div', {class: 'work'}, play, place, time, make('label', {class: 'volume'}, 'volume ', loud)));

  const now = () => running.length && context ? Math.min(buffers[0].duration, from + context.currentTime - began) : from;

  async function start() {
    try {
      context ??= new AudioContext();
      await context.resume();
      if (!buffers.length) {
        play.textContent = 'being fetched …';
        buffers = await Promise.all(sounds.map(async s => context.decodeAudioData(await fetchOne(s.name))));
        place.max = String(buffers[0].duration);
      }
    } catch (problem) {
      play.textContent = 'Play';
      time.textContent = `It can't be played: ${/** @type {Error} */ (problem).message}`;
      say(time.textContent);
      return;
    }
    if (from >= buffers[0].duration - .05) from = 0;
    volume = context.createGain();
    volume.gain.setValueAtTime(0, context.currentTime);
    volume.gain.linearRampToValueAtTime(level(), context.currentTime + .3);
    volume.connect(context.destination);
    began = context.currentTime + .05;
    running = buffers.map((buffer, k) => {
      const source = context.createBufferSource(), gain = context.createGain();
      source.buffer = buffer;
      gain.gain.value = k === side ? 1 : 0;
      source.connect(gain).connect(volume);
      source.start(began, from);
      return {source, gain};
    });
    running[0].source.onended = () => { if (running.length && now() >= buffers[0].duration - .05) { from = 0; halt(); } };
    play.textContent = 'Pause';
    root.dataset.state = 'playing';
    follow();
  }

  function halt() {
    for (const one of running) { one.source.onended = null; one.source.stop(); one.source.disconnect(); }
    running = [];
    volume?.disconnect();
    cancelAnimationFrame(drawing);
    play.textContent = 'Play';
    root.dataset.state = 'still';
    show();
  }

  function pause() {
    from = now();
    halt();
  }

  /** The other is heard from this instant on; both go on running. @param {number} k */
  function turn(k) {
    side = k;
    root.dataset.side = LETTERS[k];
    running.forEach((one, n) => one.gain.gain.setTargetAtTime(n === k ? 1 : 0, context.currentTime, TURN / 3));
  }

  /** Even steps of the hand are even steps to the ear, roughly. */
  const level = () => Math.min(LOUDEST, (loud.valueAsNumber / 100) ** 2);

  function show() {
    const t = Math.max(0, now());
    if (document.activeElement !== place || running.length) place.value = String(t);
    const whole = buffers.length ? ` of ${buffers[0].duration.toFixed(0)} s` : '';
    time.textContent = `${t.toFixed(1)} s${whole}`;
    place.setAttribute('aria-valuetext', `${t.toFixed(0)} s`);
    root.dataset.at = t.toFixed(2);
  }

  function follow() {
    show();
    if (running.length) drawing = requestAnimationFrame(follow);
  }

  place.addEventListener('input', () => {
    const again = running.length > 0;
    if (again) halt();
    from = place.valueAsNumber;
    if (again) start(); else show();
  });
  loud.addEventListener('input', () => volume?.gain.setTargetAtTime(level(), context.currentTime, .03));
  return root;
}
