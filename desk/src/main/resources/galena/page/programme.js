// What the programme makes of the carrier: the envelope over one cycle of a slow tone, and the static curve that it follows.
import {draw, letter, path, squares} from './ink.js';

const LEFT = 10, RIGHT = 310, TOP = 6, BOTTOM = 106;

/** @param {any} frame @param {import('./api.js').Picture} picture */
export function drawEnvelope(frame, picture) {
  const m = picture.modulation;
  if (m.state === 'pending' && frame.plot.childElementCount) return;
  const marks = [squares(LEFT, TOP, RIGHT, BOTTOM, 20)];
  const middle = (TOP + BOTTOM) / 2;
  if (m.state !== 'curve' || !m.envelope.length) {
    frame.word.textContent = m.state === 'pending' ? '' : m.state === 'curve' ? 'the oscillation ends before that level' : m.reason;
    frame.plot.replaceChildren(...marks);
    return;
  }
  frame.word.textContent = `by ${m.levelWords} peak from ${m.source}`;
  const most = Math.max(...m.envelope), n = m.envelope.length, half = (BOTTOM - TOP) / 2 - 4;
  const upper = [...m.envelope, m.envelope[0]].map((v, k) => ({x: LEFT + (RIGHT - LEFT) * k / n, y: middle - half * v / most}));
  const lower = upper.map(p => ({x: p.x, y: 2 * middle - p.y}));
  let hatch = '';
  upper.forEach((p, k) => { if (k % 2) hatch += `M${p.x.toFixed(1)} ${p.y.toFixed(1)}V${lower[k].y.toFixed(1)}`; });
  const rest = half * m.envelope[0] / most;
  marks.push(draw('path', {class: 'hatch', d: hatch}), draw('path', {class: 'line', d: path(upper)}),
    draw('path', {class: 'line', d: path(lower)}),
    draw('path', {class: 'pencil', d: `M${LEFT} ${middle - rest}H${RIGHT}M${LEFT} ${middle + rest}H${RIGHT}`}),
    letter(LEFT, 120, `+${m.positivePeak} and −${m.negativePeak}`), letter(RIGHT, 120, `${m.distortion} distortion`, '', 'end'));
  frame.plot.replaceChildren(...marks);
  frame.plot.setAttribute('aria-label',
    `Envelope with ${m.levelWords}: positive peak ${m.positivePeak}, negative peak ${m.negativePeak}, distortion ${m.distortion}`);
}

/** @param {any} frame @param {import('./api.js').Picture} picture */
export function drawCurve(frame, picture) {
  const m = picture.modulation;
  if (m.state === 'pending' && frame.plot.childElementCount) return;
  const marks = [squares(LEFT, TOP, RIGHT, BOTTOM, 20), draw('path', {class: 'axis', d: `M${LEFT} ${BOTTOM}H${RIGHT}`})];
  if (m.state !== 'curve') {
    frame.word.textContent = '';
    frame.plot.replaceChildren(...marks);
    return;
  }
  frame.word.textContent = `clean down to −${m.deepestClean}`;
  const from = m.audio[0], to = m.audio[m.audio.length - 1], most = Math.max(...m.amplitude);
  const x = v => LEFT + (RIGHT - LEFT) * (v - from) / (to - from), y = a => BOTTOM - (BOTTOM - TOP - 6) * a / most;
  const points = m.audio.map((v, k) => ({x: x(v), y: y(m.amplitude[k])}));
  marks.push(draw('path', {class: 'pencil', d: `M${x(0)} ${TOP}V${BOTTOM}M${x(-m.level)} ${TOP}V${BOTTOM}M${x(m.level)} ${TOP}V${BOTTOM}`}));
  marks.push(draw('path', {class: 'line', d: path(points)}));
  points.forEach(p => marks.push(draw('circle', {class: 'dot', cx: p.x.toFixed(1), cy: p.y.toFixed(1), r: 1.9})));
  marks.push(letter(x(0), 120, 'no audio', 'small', 'middle'));
  if (m.level < to * .95) marks.push(letter(x(-m.level), 120, `−${m.levelWords}`, 'small', 'middle'), letter(x(m.level), 120, `+${m.levelWords}`, 'small', 'middle'));
  frame.plot.replaceChildren(...marks);
  frame.plot.setAttribute('aria-label', `${m.quantity} against the audio voltage of ${m.source}; clean down to −${m.deepestClean}`);
}
