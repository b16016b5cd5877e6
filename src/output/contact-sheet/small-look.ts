/** The look of small copies: cloth light, what is only kept clear dashed and lighter, quilting dark; no words, no marks. */

import {
  type Drawing,
  type LayerId,
  type Stroke,
  type StyledPath,
  type StyleSheet,
  styled,
} from '../../drawing/index.ts';

export interface SmallLook {
  /** Seams, a block's edge, a motif's. */
  readonly cloth: Stroke;
  /** Start lines, margins, mitres; left out where not given. */
  readonly kept?: Stroke;
  readonly stitch: Stroke;
  readonly channel?: Stroke;
  readonly fill?: Stroke;
  readonly way?: Stroke;
}

export const smallSheet = ({ cloth, kept, stitch, channel, fill, way }: SmallLook): StyleSheet => ({
  lines: {
    seam: cloth,
    block: cloth,
    motif: cloth,
    ...(kept && { startLine: kept, margin: kept, clear: kept, limit: kept, mitre: kept }),
    stitch,
    ...(channel && { channel }),
    ...(fill && { fill }),
    ...(way && { way }),
  },
  areas: {},
  words: {},
});

/** The lines of some layers in a look, from the back. */
export const smallLines = (
  drawing: Drawing,
  sheet: StyleSheet,
  layers: readonly LayerId[],
): readonly StyledPath[] => {
  const shown = styled(drawing, sheet).layers;
  return layers.flatMap((id) => shown[id].filter((item) => item.kind === 'path'));
};
