/**
 * Starts the workers. From a web address a worker is started by its address; from a folder on disk browsers refuse
 * that, and the worker's script is loaded as any other and handed over as text. So it is where the page is one file,
 * which has all scripts in it.
 */

import type { Hand } from './client.ts';
import { heldText, isOneFile } from './held.ts';
import type { Fonts } from './messages.ts';

type WorkerName = 'quick' | 'thorough';

/** What the scripts that are loaded put into the page's scope. */
interface Scope {
  readonly swagwright_version?: string;
  readonly swagwright_start?: () => void;
  readonly swagwright_quick?: () => void;
  readonly swagwright_thorough?: () => void;
  readonly swagwright_fonts?: { readonly regular: string; readonly bold: string };
}

const scope = globalThis as Scope;

/**
 * A file by the version of the page that asks for it, under which whoever keeps files has those of this page and of no
 * other (scripts/build-page.mjs).
 */
const address = (file: string): string => `${file}?${scope.swagwright_version}`;

export const loadScript = async (file: string): Promise<void> => {
  const text = heldText(file);
  const script = document.createElement('script');
  if (text === undefined) return loaded(Object.assign(script, { src: address(file) }), file);
  script.textContent = text;
  // It runs as soon as it stands there, and takes from the page's own script what that shows at its end: so not before it.
  await undefined;
  document.head.append(script);
};

/** One file has all style sheets in one, from the beginning. */
export const loadStyle = async (file: string): Promise<void> => {
  if (isOneFile()) return;
  await loaded(
    Object.assign(document.createElement('link'), { rel: 'stylesheet', href: address(file) }),
    file,
  );
};

const loaded = (element: HTMLElement, file: string): Promise<void> =>
  new Promise((resolve, reject) => {
    element.onload = () => resolve();
    element.onerror = () => {
      element.remove();
      reject(new Error(`${file} could not be loaded`));
    };
    document.head.append(element);
  });

/** Whether workers start by their address; else they start from a text. */
export const isByAddress = (): boolean => location.protocol !== 'file:' && !isOneFile();

export const hire = async (name: WorkerName): Promise<Hand> => {
  if (isByAddress()) return new Worker(address(`${name}.js`)) as Hand;
  const key = `swagwright_${name}` as const;
  if (!scope[key]) await loadScript(`${name}.js`);
  const text = `(${scope.swagwright_start})();(${scope[key]})()`;
  return new Worker(URL.createObjectURL(new Blob([text], { type: 'text/javascript' }))) as Hand;
};

let known: Promise<Fonts> | undefined;

/** The fonts of printed pages, loaded when the first page is wanted. */
export const loadFonts = (): Promise<Fonts> => {
  known ??= loadScript('fonts.js').then(() => {
    const { regular = '', bold = '' } = scope.swagwright_fonts ?? {};
    return { regular: bytesOf(regular), bold: bytesOf(bold) };
  });
  known.catch(() => {
    known = undefined;
  });
  return known;
};

const bytesOf = (base64: string): Uint8Array => Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
