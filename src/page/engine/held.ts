/** A page that is one file has the others in it as text, each under its name (scripts/one-file.mjs). */

/** The text of such a file; undefined where the page is several files, or there is none, as in a test. */
export const heldText = (file: string): string | undefined =>
  typeof document === 'undefined'
    ? undefined
    : (document.querySelector(`[data-file="${file}"]`)?.textContent ?? undefined);

export const isOneFile = (): boolean => heldText('fonts.js') !== undefined;

let source: string | undefined;

/** Called before the page changes anything of what was loaded. */
export const keepSource = (): void => {
  if (isOneFile()) source = `<!doctype html>\n${document.documentElement.outerHTML}\n`;
};

/** The one file as it was loaded, for a copy of it. */
export const ownSource = (): string | undefined => source;
