/** `--as`: how a design goes onto cloth. */

import { TRANSFERS, type Transfer } from '../jobs/transfer.ts';
import { readWord } from './option-values.ts';
import type { TransferOptions } from './options.ts';

export const readTransfer = ({ as }: TransferOptions): Transfer | undefined =>
  as === undefined ? undefined : readWord('--as', as, TRANSFERS);
