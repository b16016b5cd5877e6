/** Paper for pages that are read and not taped: its size as it is held, and the area that is printed on. */

import type { Box } from '../../geometry/index.ts';
import type { Margins, Orientation, Paper } from '../../pagination/index.ts';

export interface PageSetup {
  /** `Letter, portrait`. */
  readonly name: string;
  readonly pickTray: boolean;
  /** mm */
  readonly width: number;
  readonly height: number;
  /** Where the page may be printed on. */
  readonly live: Box;
}

export const pageSetup = (paper: Paper, orientation: Orientation, margins: Margins): PageSetup => {
  const upright = orientation === 'portrait';
  const width = upright ? paper.width : paper.height;
  const height = upright ? paper.height : paper.width;
  return {
    name: `${paper.name}, ${orientation}`,
    pickTray: paper.inTray,
    width,
    height,
    live: {
      minX: margins.left,
      minY: margins.bottom,
      maxX: width - margins.right,
      maxY: height - margins.top,
    },
  };
};
