// One value changed here and elsewhere: the builder says which shall stand. Nothing is lost by leaving it open.
import {byId} from './ink.js';

/**
 * @param {{path: string, seen?: string, theirs?: string, mine?: string}} told
 * @returns {Promise<string>} 'mine', 'theirs', or '' for later
 */
export function choose(told) {
  const dialog = byId('conflict');
  byId('conflict-path').textContent = told.path;
  for (const which of ['seen', 'theirs', 'mine']) byId(`conflict-${which}`).textContent = told[which] ?? 'nothing';
  dialog.returnValue = '';
  const back = document.activeElement;
  return new Promise(resolve => {
    dialog.addEventListener('close', () => {
      const key = back?.getAttribute('data-key'), again = back?.isConnected ? back : key && document.querySelector(`[data-key="${CSS.escape(key)}"]`);
      if (again instanceof HTMLElement) again.focus();
      resolve(dialog.returnValue);
    }, {once: true});
    dialog.showModal();
  });
}
