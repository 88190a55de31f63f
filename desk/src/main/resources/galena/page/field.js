// One value as the builder writes it: typed in any form, refused with the remedy beside it, stepped through preferred values.
import {make, say} from './ink.js';

let number = 0;

/**
 * Whether something is being written in there, or asked about: it must not be drawn anew then.
 * @param {HTMLElement} place
 */
export function beingWritten(place) {
  const at = document.activeElement;
  if (at instanceof HTMLInputElement && place.contains(at) && at.dataset.touched === 'true') return true;
  return document.querySelector('dialog[open]') !== null && place.querySelector('[data-touched="true"]') !== null;
}

/**
 * @param {string} label @param {string} text as it stands @param {(text: string, seen: string) => Promise<string | null | void>} keep
 *   answers what stands now, throws when it is refused; seen is what stood there
 * @param {{key: string, below: string, above: string, pencil?: boolean, bare?: boolean}} more
 */
export function field(label, text, keep, more) {
  const id = `field-${++number}`;
  const input = make('input', {type: 'text', id, value: text, spellcheck: false, autocomplete: 'off', class: more.pencil ? 'tried' : 'inked', 'data-key': more.key});
  const refusal = make('p', {class: 'refusal', id: `${id}-refusal`, hidden: true});
  const refuse = message => {
    refusal.textContent = message;
    refusal.hidden = !message;
    input.setAttribute('aria-invalid', String(Boolean(message)));
    if (message) { input.setAttribute('aria-describedby', refusal.id); say(message); } else input.removeAttribute('aria-describedby');
  };
  let sent = null;
  const send = async typed => {
    const wanted = typed.trim();
    if (wanted === sent) return; // Enter and leaving the field both say so
    if (wanted === text) { refuse(''); input.dataset.touched = 'false'; return; }
    sent = wanted;
    try {
      const stands = await keep(wanted, text);
      text = stands ?? wanted;
      sent = text;
      input.value = text;
      input.dataset.touched = 'false';
      refuse('');
      say(`${label}: ${text}`);
    } catch (problem) {
      refuse(/** @type {Error} */ (problem).message);
    }
  };
  input.addEventListener('input', () => { sent = null; input.dataset.touched = String(input.value !== text); });
  input.addEventListener('change', () => send(input.value));
  input.addEventListener('keydown', event => {
    if (event.key === 'Enter') { event.preventDefault(); send(input.value); }
    if (event.key === 'Escape') { input.value = text; input.dataset.touched = 'false'; refuse(''); }
  });
  const step = (sign, to) => to
    ? [make('button', {type: 'button', 'data-key': `${more.key}${sign}`, 'aria-label': `${label}: ${to}`, title: to, onclick: () => { input.value = to; send(to); }}, sign)]
    : [];
  const name = make('label', {for: id, class: more.bare ? 'quiet' : ''}, label);
  return make('div', {class: 'value'}, name, input, ...step('−', more.below), ...step('+', more.above), refusal);
}
