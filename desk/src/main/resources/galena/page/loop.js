// The loop at the side: how far the build has come, and the next sensible thing.
import {on} from './book.js';
import {byId, make} from './ink.js';

const MARKS = {done: '✓', open: '○', older: '↻', misses: '✗'};
const WORDS = {done: 'done', open: 'open', older: 'to be asked again', misses: 'something is not met'};

export function loop() {
  on('state', state => {
    const place = byId('steps'), focus = place.contains(document.activeElement) ? document.activeElement?.getAttribute('href') : null;
    place.replaceChildren(...state.steps.map(step => make('li', {},
      make('a', {href: `#${step.name}`, data: {mark: step.mark}, title: step.question},
        make('span', {class: 'mark', 'aria-hidden': 'true'}, MARKS[step.mark]),
        make('span', {class: 'step'}, step.name, make('span', {class: 'quiet'}, `: ${WORDS[step.mark]},`)),
        make('span', {class: 'words'}, step.words)))));
    if (focus) place.querySelector(`[href="${focus}"]`)?.focus();
    byId('next').textContent = state.next;
    for (const room of document.querySelectorAll('.room[id]')) {
      if (room instanceof HTMLElement) room.hidden = !state.steps.some(step => step.name === room.id);
    }
  });
}
