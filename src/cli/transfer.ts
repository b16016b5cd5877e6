/** `--as`, and what goes with it: how a design gets onto cloth. */

import { TRANSFERS, type Transfer } from '../jobs/transfer.ts';
import type { Units } from '../length/index.ts';
import { eitherOf } from './either-of.ts';
import { readLengthOption, readWord } from './option-values.ts';
import type { TransferOptions } from './options.ts';
import { wrongValue } from './wrong-use.ts';

/** Which ways the options are for that say how large something is. */
const FOR = {
  every: ['pounce', 'stencil'],
  slot: ['stencil'],
  bridge: ['stencil'],
} as const satisfies Partial<Record<keyof TransferOptions, readonly Transfer['kind'][]>>;

/** What is asked, once the units of bare numbers are known. Throws wrong use, what needs no plan at once. */
export const readTransfer = (options: TransferOptions): ((units: Units) => Transfer | undefined) => {
  const { as, mirrored } = options;
  const kind = as === undefined ? undefined : readWord('--as', as, TRANSFERS);
  if (kind === undefined && mirrored)
    throw wrongValue('--mirrored', 'a picture with words cannot be mirrored', { hint: 'add --as clean' });
  const sizes = Object.keys(FOR) as (keyof typeof FOR)[];
  for (const size of sizes) {
    const kinds: readonly string[] = FOR[size];
    if (options[size] !== undefined && !(kind && kinds.includes(kind)))
      throw wrongValue(`--${size}`, `it goes with --as ${eitherOf(kinds)}`);
  }
  if (kind === undefined) return () => undefined;
  return (units) => {
    const mm = (size: keyof typeof FOR): number | undefined => {
      const text = options[size];
      return text === undefined ? undefined : readLengthOption(`--${size}`, text, units, 'positive');
    };
    return { kind, mirrored, every: mm('every'), slot: mm('slot'), bridge: mm('bridge') };
  };
};
