// One period of the carrier: the output's current in ink, the tank's voltage dashed, each against its own peak.
import {draw, letter, path, squares} from './ink.js';

const LEFT = 10, RIGHT = 310, TOP = 6, BOTTOM = 106, MIDDLE = (TOP + BOTTOM) / 2, HALF = 46;

/** @param {any} frame @param {import('./api.js').Picture} picture */
export function drawPeriod(frame, picture) {
  const traces = picture.traces ?? [];
  if (!traces.length) {
    frame.word.textContent = picture.oscillates ? 'with the whole prediction only' : 'silent';
    frame.plot.replaceChildren(squares(LEFT, TOP, RIGHT, BOTTOM, 20));
    return;
  }
  frame.word.textContent = picture.carrier ? `${(1e6 / picture.carrier.value).toFixed(4)} µs` : '';
  const marks = [squares(LEFT, TOP, RIGHT, BOTTOM, 20), draw('path', {class: 'axis', d: `M${LEFT} ${MIDDLE}H${RIGHT}`})];
  traces.forEach((trace, k) => {
    const second = k < traces.length - 1;
    const n = trace.samples.length, scale = trace.peak > 0 ? HALF / trace.peak : 0;
    const points = [...trace.samples, trace.samples[0]].map((v, i) => (
      {x: LEFT + (RIGHT - LEFT) * i / n, y: MIDDLE - v * scale}));
    marks.push(draw('path', {class: second ? 'line second' : 'line', d: path(points)}));
    marks.push(letter(second ? LEFT : RIGHT, 120, `${second ? '╌ ' : '— '}${trace.quantity}, ${trace.peakWords}`,
      second ? 'blue' : '', second ? 'start' : 'end'));
  });
  frame.plot.replaceChildren(...marks);
  frame.plot.setAttribute('aria-label', 'One period of ' + traces.map(t => `${t.quantity}, peak ${t.peakWords}`).join('; '));
}
