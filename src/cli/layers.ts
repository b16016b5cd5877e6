/** `--without`: the names of layers. */

import { LAYERS, type LayerId } from '../drawing/index.ts';
import { readWord } from './option-values.ts';
import type { LayerOptions } from './options.ts';

export const readWithout = ({ without = [] }: LayerOptions): readonly LayerId[] =>
  without.map((name) => readWord('--without', name, LAYERS));
