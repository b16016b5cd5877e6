/** How a plan says that a part lies in the corners that another leaves free: `corners of outer border`. */

const WRITTEN = /^corners of\s+(\S.*)$/;

/** The name of the other part; undefined where it is not that that is written. */
export const inCornersOf = (written: string): string | undefined => WRITTEN.exec(written)?.[1];

export const cornersOfWritten = (name: string): string => `corners of ${name}`;
