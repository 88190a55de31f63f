// Readings with their uncertainty over what is predicted of them, each on a rule of its own.
import {draw, make} from './ink.js';

/**
 * @typedef {{label: string, at: string, measuredWords: string, measured: number, measuredLow: number, measuredHigh: number,
 *   predictedWords: string, predicted?: number, low?: number, high?: number, verdict: string}} Strip
 */

const MARKS = {fits: '✓', apart: '✗'}, WIDTH = 220, HEIGHT = 34, EDGE = 12;

/** @param {Strip[]} strips @param {string} caption */
export function stripTable(strips, caption) {
  return make('table', {class: 'strips'}, make('caption', {}, caption),
    make('thead', {}, make('tr', {}, ...['reading', 'at', 'measured', 'both', 'predicted', 'verdict'].map(h => make('th', {scope: 'col'}, h)))),
    make('tbody', {}, ...strips.map(strip => make('tr', {data: {verdict: strip.verdict}},
      make('th', {scope: 'row'}, strip.label), make('td', {}, strip.at || '–'), make('td', {class: 'measured'}, strip.measuredWords),
      make('td', {class: 'drawn'}, picture(strip)), make('td', {}, strip.predictedWords),
      make('td', {class: 'verdict-word'}, MARKS[strip.verdict] ? `${MARKS[strip.verdict]}\u00a0${strip.verdict}` : strip.verdict)))));
}

/** The reading above, the prediction below, on one scale. @param {Strip} s */
function picture(s) {
  const svg = draw('svg', {class: 'plot strip', viewBox: `0 0 ${WIDTH} ${HEIGHT}`, 'aria-hidden': 'true'});
  if (s.predicted === undefined || s.low === undefined || s.high === undefined) return svg;
  const least = Math.min(s.low, s.measuredLow), most = Math.max(s.high, s.measuredHigh);
  const x = v => most > least ? EDGE + (WIDTH - 2 * EDGE) * (v - least) / (most - least) : WIDTH / 2;
  svg.append(draw('rect', {class: 'band', x: x(s.low).toFixed(1), y: 16, width: Math.max(1.5, x(s.high) - x(s.low)).toFixed(1), height: 12}),
    draw('path', {class: 'axis', d: `M${x(s.predicted).toFixed(1)} 14V30`}),
    draw('path', {class: 'reading', d: `M${x(s.measuredLow).toFixed(1)} 9H${x(s.measuredHigh).toFixed(1)}M${x(s.measuredLow).toFixed(1)} 5v8M${x(s.measuredHigh).toFixed(1)} 5v8`}),
    draw('circle', {class: 'read', cx: x(s.measured).toFixed(1), cy: 9, r: 3.2}));
  return svg;
}
