/**
 * What comes when it is first wanted, so that the page opens with less: a script of its own with its style sheet. It
 * takes from the first script all that that has, and puts what it adds into the page's scope.
 */

import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { loadScript, loadStyle } from '../engine/hire.ts';

/** A template from a picture of it, or from points: `trace.js`. */
export interface TracePart {
  readonly View: ComponentType;
  readonly begin: (picture: File) => void;
  readonly points: () => void;
  /** Rejects where the browser has it no longer. `title` is what the template is called by now. */
  readonly goOn: (key: string, title?: string) => Promise<void>;
}

const scope = globalThis as { swagwright_trace?: TracePart };

/** How the script hands over what it adds. */
export const addTracePart = (part: TracePart): void => {
  scope.swagwright_trace = part;
};

const trace = signal<TracePart | undefined>(undefined);

/** Throws where the script cannot be loaded. */
export const wantTracePart = async (): Promise<TracePart> => {
  if (!scope.swagwright_trace) await Promise.all([loadScript('trace.js'), loadStyle('trace.css')]);
  trace.value = scope.swagwright_trace;
  if (!trace.value) throw new Error('trace.js adds nothing');
  return trace.value;
};

export const Trace = () => {
  const View = trace.value?.View;
  return View ? <View /> : null;
};
