/** `--as`, and what goes with it: how a design gets onto cloth. */

import { TRANSFERS, type Transfer } from '../jobs/transfer.ts';
import type { Units } from '../length/index.ts';
import { readLengthOption, readWord } from './option-values.ts';
import type { TransferOptions } from './options.ts';
import { wrongValue } from './wrong-use.ts';

/** What is asked, once the units of bare numbers are known. Throws wrong use, what needs no plan at once. */
export const readTransfer = ({
  as,
  mirrored,
  every,
}: TransferOptions): ((units: Units) => Transfer | undefined) => {
  if (as === undefined) {
    if (mirrored)
      throw wrongValue('--mirrored', 'a picture with words cannot be mirrored', { hint: 'add --as clean' });
    if (every !== undefined) throw wrongValue('--every', NO_HOLES, { hint: 'add --as pounce' });
    return () => undefined;
  }
  const kind = readWord('--as', as, TRANSFERS);
  if (every !== undefined && kind !== 'pounce')
    throw wrongValue('--every', NO_HOLES, { hint: 'say --as pounce' });
  return (units) => ({
    kind,
    mirrored,
    every: every === undefined ? undefined : readLengthOption('--every', every, units, 'positive'),
  });
};

const NO_HOLES = 'it is for holes';
