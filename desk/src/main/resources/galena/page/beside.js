// A capture laid over the prediction of its test point: the folded trace, the harmonics, the readings.
import {draw, letter, make, path, squares} from './ink.js';
import {stripTable} from './strips.js';

const LEFT = 44, RIGHT = 470, TOP = 8, BOTTOM = 168, DEEPEST = -80;

/** @param {any} told */
export function besides(told) {
  return [make('figure', {class: 'over'}, told.samples.length ? wave(told) : make('p', {class: 'pending'}, `No trace is drawn: ${told.without}.`),
    make('figcaption', {}, `${told.point}${told.probe ? ` through its ${told.probe} probe` : ''}: ink is predicted with typical parts, blue dots are the samples, folded onto two periods and shifted to the same phase${told.envelope ? ', from where the carrier is as tall as without audio' : ''}.`)),
  make('figure', {class: 'over'}, spectrum(told),
    make('figcaption', {}, 'Harmonics against the carrier: grey is the predicted interval, the stem is typical; blue is measured with its interval, an arrow is a limit.')),
  ...(told.envelope ? [make('figure', {class: 'over'}, envelope(told.envelope),
    make('figcaption', {}, told.envelope.without ? `The envelope as measured; no prediction is drawn: ${told.envelope.without}.`
      : `The envelope, each against its own mean, shifted to the same phase: ink is predicted by the static curve (${told.envelope.quantity}), blue dots are measured.`))] : []),
  ...(told.strips.length ? [stripTable(told.strips, 'Its readings over the predicted intervals, as the build is set')] : [])];
}

function wave(told) {
  const most = Math.max(...told.predicted.map(Math.abs), ...told.samples.map(Math.abs)) * 1.06;
  const x = t => LEFT + (RIGHT - LEFT) * t / told.span, y = v => (TOP + BOTTOM) / 2 - (BOTTOM - TOP) / 2 * v / most;
  const n = told.predicted.length - 1, tick = nice(most);
  const marks = [squares(LEFT, TOP, RIGHT, BOTTOM, 20), draw('path', {class: 'axis', d: `M${LEFT} ${TOP}V${BOTTOM}M${LEFT} ${y(0)}H${RIGHT}`})];
  for (const v of [-tick, 0, tick]) marks.push(letter(LEFT - 5, y(v) + 4, volts(v), 'small', 'end'));
  marks.push(letter(RIGHT, BOTTOM + 15, `${(told.span * 1e6).toFixed(3)} µs`, 'small', 'end'));
  marks.push(draw('path', {class: 'line', d: path(told.predicted.map((v, k) => ({x: x(told.span * k / n), y: y(v)})))}));
  told.times.forEach((t, k) => marks.push(draw('circle', {class: 'read', cx: x(t).toFixed(1), cy: y(told.samples[k]).toFixed(1), r: 1.7})));
  return draw('svg', {class: 'plot', viewBox: '0 0 480 188', role: 'img',
    'aria-label': `Two periods at ${told.point}: measured ${volts(peak(told.samples))} peak over predicted ${volts(peak(told.predicted))} peak`}, ...marks);
}

function envelope(e) {
  const most = Math.max(2, ...e.measured, ...e.predicted), span = e.times[e.times.length - 1] - e.times[0];
  const x = k => LEFT + (RIGHT - LEFT) * (e.times[k] - e.times[0]) / span, y = v => BOTTOM - (BOTTOM - TOP) * v / most;
  const marks = [squares(LEFT, TOP, RIGHT, BOTTOM, 20), draw('path', {class: 'axis', d: `M${LEFT} ${TOP}V${BOTTOM}H${RIGHT}`}),
    draw('path', {class: 'pencil', d: `M${LEFT} ${y(1)}H${RIGHT}`})];
  for (const v of [0, 1, 2]) marks.push(letter(LEFT - 5, y(v) + 4, String(v), 'small', 'end'));
  marks.push(letter(RIGHT, BOTTOM + 15, `${(span * 1e3).toFixed(2)} ms, tone ${e.tone.toFixed(0)} Hz`, 'small', 'end'));
  const stride = Math.max(1, Math.floor(e.times.length / 260));
  if (e.predicted.length) marks.push(draw('path', {class: 'line', d: path(e.predicted.map((v, k) => ({x: x(k), y: y(v)})))}));
  e.measured.forEach((v, k) => { if (k % stride === 0) marks.push(draw('circle', {class: 'read', cx: x(k).toFixed(1), cy: y(v).toFixed(1), r: 1.7})); });
  const peaks = values => `+${((Math.max(...values) - 1) * 100).toFixed(1)} % and −${((1 - Math.min(...values)) * 100).toFixed(1)} %`;
  return draw('svg', {class: 'plot', viewBox: '0 0 480 188', role: 'img',
    'aria-label': `Envelope: measured ${peaks(e.measured)}${e.predicted.length ? `, predicted ${peaks(e.predicted)}` : ''}`}, ...marks);
}

const peak = values => Math.max(...values.map(Math.abs));

function spectrum(told) {
  const y = level => TOP + (BOTTOM - TOP) * Math.min(0, Math.max(DEEPEST, level)) / DEEPEST;
  const marks = [squares(LEFT, TOP, RIGHT, BOTTOM, 20)];
  for (let level = 0; level >= DEEPEST; level -= 20) marks.push(letter(LEFT - 5, y(level) + 4, level === 0 ? 'dBc' : `−${-level}`, 'small', 'end'));
  marks.push(draw('path', {class: 'axis', d: `M${LEFT} ${TOP}V${BOTTOM}H${RIGHT}`}));
  const step = (RIGHT - LEFT) / (told.harmonics.length + 1), words = [];
  for (const h of told.harmonics) {
    const x = LEFT + step * (h.number - 1), m = x + 14;
    marks.push(letter(x + 6, BOTTOM + 15, `${h.number}f`, '', 'middle'));
    if (h.low !== undefined) marks.push(draw('rect', {class: 'band', x: x - 7, y: y(h.high), width: 14, height: Math.max(1.5, y(h.low) - y(h.high))}));
    if (h.typical > DEEPEST) marks.push(draw('path', {class: 'stem', d: `M${x} ${BOTTOM}V${y(h.typical)}`}));
    if (h.measured !== undefined) marks.push(
      draw('path', {class: 'reading', d: `M${m} ${y(h.measuredLow)}V${y(h.measuredHigh)}M${m - 4} ${y(h.measuredLow)}h8M${m - 4} ${y(h.measuredHigh)}h8`}),
      draw('circle', {class: 'read', cx: m, cy: y(h.measured), r: 3.4}));
    else if (h.below !== undefined) marks.push(draw('path', {class: 'reading', d: `M${m - 6} ${y(h.below)}h12M${m} ${y(h.below)}v12m-4 -4l4 4l4 -4`}));
    words.push(`${h.number}f predicted ${h.typical.toFixed(0).replace('-', '−')} dBc${h.words ? `, measured ${h.words}` : ''}`);
  }
  return draw('svg', {class: 'plot', viewBox: '0 0 480 188', role: 'img', 'aria-label': `Harmonics at ${told.point}: ${words.join('; ')}`}, ...marks);
}

/** @param {number} most */
function nice(most) {
  const decade = 10 ** Math.floor(Math.log10(most));
  return [5, 2, 1].map(n => n * decade).find(n => n <= most) ?? decade;
}

/** @param {number} v */
function volts(v) {
  if (v === 0) return '0 V';
  const small = Math.abs(v) < .9995, shown = small ? v * 1e3 : v;
  return `${+shown.toPrecision(3)} ${small ? 'mV' : 'V'}`.replace('-', '−');
}
