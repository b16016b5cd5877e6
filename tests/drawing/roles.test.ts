/** Roles and looks: every role has a look on paper, and what stands on a layer keeps its role through styling. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { LAYERS, SHEET, styled } from '../../src/drawing/index.ts';
import { AREA_ROLES, LINE_ROLES, WORD_ROLES } from '../../src/drawing/role.ts';

const point = { x: 0, y: 0 };
const empty = Object.fromEntries(LAYERS.map((id) => [id, []])) as unknown as Record<
  (typeof LAYERS)[number],
  []
>;

describe('the style sheet of true-size sheets', () => {
  test('has a look for every role, a solid line or dashes that are not nothing', () => {
    expect(Object.keys(SHEET.lines).sort()).toEqual([...LINE_ROLES].sort());
    expect(Object.keys(SHEET.areas).sort()).toEqual([...AREA_ROLES].sort());
    expect(Object.keys(SHEET.words).sort()).toEqual([...WORD_ROLES].sort());
    for (const { width, dash = [] } of Object.values(SHEET.lines) as { width: number; dash?: number[] }[]) {
      expect(width).toBeGreaterThan(0);
      for (const length of dash) expect(length).toBeGreaterThan(0);
    }
  });

  test('is not asked for what another use leaves out', () => {
    const drawing = {
      title: '',
      layers: {
        ...empty,
        stitch: [{ kind: 'path', path: { pieces: [], closed: false }, role: 'stitch' }],
        border: [{ kind: 'path', path: { pieces: [], closed: false }, role: 'margin' }],
        notes: [
          { kind: 'text', text: 'a', at: point, size: 1, align: 'start', angle: 0, role: 'note' },
          { kind: 'text', text: 'b', at: point, size: 1, align: 'start', angle: 0, role: 'label' },
        ],
      },
    } as const;
    const sheet = {
      lines: { stitch: { width: 1, color: '#123456' } },
      areas: {},
      words: { label: '#654321' },
    };
    const { layers } = styled(drawing, sheet);
    expect(layers.border).toEqual([]);
    expect(layers.stitch).toMatchObject([{ role: 'stitch', stroke: { width: 1, color: '#123456' } }]);
    expect(layers.notes).toMatchObject([{ text: 'b', color: '#654321' }]);
  });

  test('every line that the page draws of a design has a look in its own style sheet', () => {
    const css = readFileSync(join(import.meta.dirname, '../../src/page/styles/drawings.css'), 'utf8');
    const drawnOnPage = LINE_ROLES.filter((role) => !/^(spacer|measure|unreached)/.test(role));
    for (const role of drawnOnPage) expect(css).toContain(`.ink.${role}`);
  });
});
