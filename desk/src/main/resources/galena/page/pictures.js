// The carrier's period, its harmonics, and what the programme makes of it.
import {on} from './book.js';
import {byId, frame} from './ink.js';
import {drawPeriod} from './period.js';
import {drawHarmonics} from './harmonics.js';
import {drawCurve, drawEnvelope} from './programme.js';

export function pictures() {
  const frames = {
    period: frame('picture-period', 'One period'),
    harmonics: frame('picture-harmonics', 'Harmonics'),
    envelope: frame('picture-envelope', 'Modulated'),
    curve: frame('picture-curve', 'Carrier against audio'),
  };
  byId('pictures').append(...Object.values(frames).map(f => f.root));
  on('picture', picture => {
    drawPeriod(frames.period, picture);
    drawHarmonics(frames.harmonics, picture);
    drawEnvelope(frames.envelope, picture);
    drawCurve(frames.curve, picture);
    mark(frames.period, picture, false);
    mark(frames.harmonics, picture, false);
    mark(frames.envelope, picture, true);
    mark(frames.curve, picture, true);
  });
}

/** Says whether a picture is that of the settings. */
function mark(frame, picture, needsCurve) {
  const state = picture.state === 'stale' ? 'stale' : needsCurve && picture.modulation.state === 'pending' ? 'pending' : 'true';
  frame.root.dataset.state = state;
  frame.root.setAttribute('aria-busy', String(state === 'pending'));
  frame.stamp.textContent =
    state === 'stale' ? 'Stale: the last settings that could be solved.' : state === 'pending' ? 'Being computed …' : '';
}
