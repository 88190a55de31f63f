// What the server is asked and what it answers. The types mirror the JSON schemas of the same names; nothing else in the page knows
// an address.

/** @typedef {{place: string, path: string, found: string, rule: string, remedy: string}} Problem */
/** @typedef {{path: string, label: string, text: string, reason: string}} Row */
/**
 * @typedef {{name: string, noun: string, label: string, shown: string, adjustable: boolean, reason: string, position?: number,
 *   positionWords?: string, setPath?: string, setText?: string, setWritten?: boolean}} Part
 */
/** @typedef {{adjustments: Object<string, number>, temperature?: number, supply?: number}} Laid */
/** @typedef {{name: string, question: string, mark: string, words: string, work: string[]}} Step */
/** @typedef {{id: number, work: string, digest: string, state: string, share: number, said: string, answered: boolean}} Job */
/**
 * @typedef {{revision: number, name: string, folder: string, digest: string, problems: Problem[], intent: Row[],
 *   supply?: {words: string, volts: number, voltsWords: string, rows: Row[]}, parts: Part[],
 *   points: {name: string, at: string, probe: string}[], laid: Laid, undo: string, redo: string,
 *   history: {when: string, how: string, path: string, before: string, after: string}[], steps: Step[], next: string,
 *   nextStep: string, jobs: Job[], work: {word: string, question: string}[], readings: number, calibrated: boolean,
 *   kinds: {key: string, words: string, example: string}[]}} State
 */
/** @typedef {{number: number, words: string, level?: number, low?: number, high?: number}} Harmonic */
/** @typedef {{part: string, quantity: string, peak: number, peakWords: string, samples: number[]}} Trace */
/**
 * @typedef {{revision: number, state: string, reason: string, way: string, milliseconds: number, complete: boolean,
 *   setting: {temperature: number, temperatureWords: string, supply?: number, supplyWords?: string,
 *   adjustments: Object<string, number>}, oscillates: boolean, silence: string,
 *   carrier?: {value: number, words: string, window: string}, facts?: Object<string, string>, output?: string,
 *   outputWords?: string, limit?: number, floor: number, wanted?: number, wantedWords?: string, harmonics?: Harmonic[], traces?: Trace[], modulation: any,
 *   judgements: {item: string, wanted: string, found: string, outcome: string, words: string, remark: string}[],
 *   notes: string[]}} Picture
 */

/** Something was refused; the problems say what and what would be right. */
export class Refused extends Error {
  /** @param {Problem[]} problems */
  constructor(problems) {
    super(problems.map(p => [p.found, p.rule, p.remedy].filter(Boolean).join('. ').replace(/\.\./g, '.')).join(' '));
    this.problems = problems;
  }
}

/** The same value was changed elsewhere meanwhile. */
export class Conflict extends Error {
  /** @param {{path: string, seen?: string, theirs?: string, mine?: string}} told */
  constructor(told) {
    super(`${told.path} was changed elsewhere meanwhile: ${told.theirs ?? 'it is gone'}. Yours is not written.`);
    this.told = told;
  }
}

/** @param {Response} response */
async function answer(response) {
  const json = response.headers.get('content-type')?.startsWith('application/json');
  if (response.status === 422 && json) throw new Refused((await response.json()).problems);
  if (response.status === 409 && json) throw new Conflict(await response.json());
  if (!response.ok) throw new Error(await response.text());
  return json ? response.json() : response.text();
}

/** @param {string} path */
export const get = async path => answer(await fetch(path));

/** @param {string} path @param {object} body */
export const post = async (path, body) => answer(await fetch(path, {
  method: 'POST', headers: {'content-type': 'application/json'}, body: JSON.stringify(body),
}));

/** @param {number} id of long work */
export const stop = async id => answer(await fetch(`/api/work/${id}`, {method: 'DELETE'}));

/** @param {File} file */
export const drop = async file => answer(await fetch(`/api/capture?name=${encodeURIComponent(file.name)}`, {
  method: 'POST', headers: {'content-type': 'application/octet-stream'}, body: file,
}));

/** @param {File} file */
export const dropProgramme = async file => answer(await fetch(`/api/programme?name=${encodeURIComponent(file.name)}`, {
  method: 'POST', headers: {'content-type': 'application/octet-stream'}, body: file,
}));

/** A recording as it lies on the disk. @param {string} path */
export async function recording(path) {
  const response = await fetch(path);
  if (!response.ok) throw new Error(await response.text());
  return response.arrayBuffer();
}

/**
 * Hears what the server tells; after a break the browser connects again by itself.
 * @param {Object<string, (data: any) => void>} hearers by event
 * @param {(there: boolean) => void} connection told when it breaks or comes back
 */
export function listen(hearers, connection) {
  const source = new EventSource('/api/events');
  for (const [name, hear] of Object.entries(hearers))
    source.addEventListener(name, event => hear(JSON.parse(/** @type {MessageEvent} */ (event).data)));
  source.addEventListener('open', () => connection(true));
  source.addEventListener('error', () => connection(false));
}
