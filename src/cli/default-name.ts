/** What an output is called when nobody says: after its plan, in the folder where the command runs. */

import { basename, extname } from 'node:path';

/** `plans/raffle.yaml` and `-mockup.pdf` give `raffle-mockup.pdf`. */
export const defaultName = (input: string, ending: string): string => {
  const base = basename(input, extname(input));
  // A name that begins with a dash would be taken for an option by the next command.
  return `${base.replace(/^-+/, '') || 'swags'}${ending}`;
};
