/**
 * What is said when the program cannot load its own parts, so that not even what says why can be loaded. Imports
 * nothing.
 */

export const lastWords = (error: unknown): string => {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (isOutOfFiles(error)) return OUT_OF_FILES;
  const told = (error instanceof Error ? error.message : String(error)).replace(/\s+/g, ' ');
  if (code === 'ERR_MODULE_NOT_FOUND' || /^E[A-Z]+$/.test(code))
    return `a part of swagwright cannot be read (${told}); install it again`;
  return `swagwright has made a mistake of its own (${told}); please report it`;
};

/** Whether the system would not open one more file for this process (EMFILE) or at all (ENFILE). */
export const isOutOfFiles = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && (error.code === 'EMFILE' || error.code === 'ENFILE');

export const OUT_OF_FILES =
  'swagwright may not open as many files as it needs; nothing was written; close other programs, or allow more (ulimit -n 1024)';
