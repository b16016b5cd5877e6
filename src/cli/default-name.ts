/** What an output is called when nobody says: after its plan or template, in the folder where the command runs. */

import { basename, extname } from 'node:path';
import { type Naming, proposedName } from '../jobs/names.ts';

/** `plans/raffle.yaml` and `mockup` give `raffle-mockup.pdf`. */
export const defaultName = (
  input: string,
  kind?: Naming['kind'],
  ending = 'pdf',
  part?: Naming['part'],
): string => proposedName({ called: basename(input, extname(input)), ...(kind && { kind }), ending, part });
