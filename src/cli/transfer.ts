/** `--as`, and what goes with it: how a design gets onto cloth. */

import { TRANSFERS, type Transfer } from '../jobs/transfer.ts';
import { readWord } from './option-values.ts';
import type { TransferOptions } from './options.ts';
import { wrongValue } from './wrong-use.ts';

/** Throws wrong use. */
export const readTransfer = ({ as, mirrored }: TransferOptions): Transfer | undefined => {
  if (as !== undefined)
    return { kind: readWord('--as', as, TRANSFERS), ...(mirrored !== undefined && { mirrored }) };
  if (mirrored)
    throw wrongValue('--mirrored', 'a picture with words cannot be mirrored', { hint: 'add --as clean' });
  return undefined;
};
