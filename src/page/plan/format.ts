/** How the page writes down what it keeps and sends. */

/** Raised when a page of before could no longer read it. One that was written by a later page may mean something else: it is not read. */
export const FORMAT = 1;

/** Whether this page knows the format; what says none is of the first. */
export const isKnownFormat = (format: unknown): boolean =>
  format === undefined || (typeof format === 'number' && format <= FORMAT);
