// Harmonics of the output against the carrier, in dB, with the line that the intent draws.
import {draw, letter, squares} from './ink.js';

const LEFT = 34, RIGHT = 310, TOP = 6, BOTTOM = 106, DEEPEST = -80;

/** @param {number} level */
const y = level => TOP + (BOTTOM - TOP) * Math.min(0, Math.max(DEEPEST, level)) / DEEPEST;

/** @param {any} frame @param {import('./api.js').Picture} picture */
export function drawHarmonics(frame, picture) {
  frame.word.textContent = picture.output ? `${picture.output}, ${picture.outputWords}` : '';
  const marks = [squares(LEFT, TOP, RIGHT, BOTTOM, 12.5)];
  for (let level = 0; level >= DEEPEST; level -= 20) marks.push(letter(LEFT - 5, y(level) + 4, level === 0 ? 'dBc' : `−${-level}`, 'small', 'end'));
  marks.push(draw('path', {class: 'axis', d: `M${LEFT} ${TOP}V${BOTTOM}H${RIGHT}`}));
  if (!picture.oscillates || !picture.harmonics) {
    frame.plot.replaceChildren(...marks);
    return;
  }
  const step = (RIGHT - LEFT) / (picture.harmonics.length + 1.6), at = n => LEFT + step * (n - .3);
  if (picture.limit !== undefined) {
    marks.push(draw('path', {class: 'limit', d: `M${LEFT} ${y(picture.limit)}H${RIGHT}`}));
    marks.push(letter(RIGHT, y(picture.limit) - 4, 'wanted below', 'small rust', 'end'));
  }
  marks.push(draw('path', {class: 'stem', d: `M${at(1)} ${BOTTOM}V${TOP}`}), letter(at(1), 119, '1f', '', 'middle'));
  let below = 0;
  for (const harmonic of picture.harmonics) {
    const x = at(harmonic.number);
    marks.push(letter(x, 119, `${harmonic.number}f`, '', 'middle'));
    if (harmonic.level === undefined) {
      const floor = -picture.floor, foot = Math.min(y(floor), BOTTOM - 9);
      marks.push(draw('path', {class: 'span', d: `M${x - 5} ${foot}h10M${x} ${foot}v7m-3 -3l3 3l3 -3`}));
      below = below || floor;
      continue;
    }
    marks.push(draw('path', {class: 'stem', d: `M${x} ${BOTTOM}V${y(harmonic.level)}`}));
    const low = harmonic.low ?? harmonic.level, high = harmonic.high ?? harmonic.level;
    if (high - low > .5)
      marks.push(draw('path', {class: 'span', d: `M${x + 7} ${y(low)}V${y(high)}M${x + 4} ${y(low)}h6M${x + 4} ${y(high)}h6`}));
    marks.push(letter(x, y(Math.max(high, harmonic.level)) - 5, harmonic.level.toFixed(0).replace('-', '−'), '', 'middle'));
  }
  if (below) marks.push(letter(RIGHT, TOP + 12, `⊤ below ${String(below).replace('-', '−')} dBc`, 'small', 'end'));
  frame.plot.replaceChildren(...marks);
  frame.plot.setAttribute('aria-label', `Harmonics of ${picture.output}: `
    + picture.harmonics.map(h => `${h.number}f ${h.words}`).join('; '));
}
