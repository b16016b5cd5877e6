/** Starts the page. */

import { render } from 'preact';
import { isOneFile, keepSource } from './engine/held.ts';
import { isReached } from './engine/this-computer.ts';
import { App } from './ui/app.tsx';
import { watchWidth } from './ui/browser.ts';
import { showDesigns } from './ui/designs-there.ts';
import { startKeeping } from './ui/keeping.ts';
import { takeFragment, takeHeld } from './ui/sharing.ts';
import { redo, start, undo } from './ui/store.ts';
import './styles/base.css';
import './styles/head.css';
import './styles/layout.css';
import './styles/drawings.css';
import './styles/quilt.css';
import './styles/panels.css';
import './styles/fingers.css';

const root = document.getElementById('page');
if (!root) throw new Error('The page has no place to stand in');
keepSource();
root.replaceChildren();
render(<App />, root);
watchWidth();
startKeeping();
showDesigns();
start();
void takeFragment();
void takeHeld();
addEventListener('hashchange', () => void takeFragment());

/** In a text field the browser's own undo is meant. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement && target.type !== 'checkbox' && target.type !== 'radio';

addEventListener('keydown', (event) => {
  if (!(event.ctrlKey || event.metaKey) || isTyping(event.target)) return;
  const key = event.key.toLowerCase();
  if (key === 'z' && !event.shiftKey) undo();
  else if (key === 'y' || (key === 'z' && event.shiftKey)) redo();
  else return;
  event.preventDefault();
});

// A file dropped beside the page must not take the page's place.
for (const kind of ['dragover', 'drop']) addEventListener(kind, (event) => event.preventDefault());

// On this computer's own addresses what it would keep could answer for another program's pages.
if ('serviceWorker' in navigator && isReached(location) && !isOneFile())
  void navigator.serviceWorker.register('service-worker.js').catch(() => {
    // Without it the page works while there is a connection.
  });
