/**
 * What is made wrong together, and the tests that must see it: those that read the room's work, the quick ones first,
 * because the first that fails ends the run. A test that is not named here proves nothing of the room.
 */

const folder = (name, ...tests) => tests.map((test) => `tests/${name}/${test}.test.ts`);

export const ROOMS = {
  length: { mutate: ['src/length/*.ts'], tests: folder('length', 'words', 'apart', 'print', 'read') },
  /** Fits in words, as terminal and page say them. */
  text: {
    mutate: ['src/output/text/*.ts', 'src/output/mockup/*.ts', 'src/swag/asked-words.ts'],
    tests: [
      ...folder('output/text', 'lengths', 'swags-words', 'fit-words', 'setting-words', 'own-corner-sizes'),
      ...folder('output/mockup', 'cautions', 'describe-design'),
      ...folder('cli', 'fit', 'kinds', 'wish-options', 'own-corners'),
    ],
  },
  card: {
    mutate: ['src/output/card/*.ts', 'src/swag/stitching.ts'],
    tests: [
      ...folder('output/card', 'channel-words', 'summary', 'work-words', 'card', 'adds-up', 'fill-words'),
      ...folder('physical', 'channel-ends', 'card-on-cloth', 'own-corners-on-cloth'),
      ...folder('cli', 'card', 'parts'),
    ],
  },
  'card-sheets': {
    mutate: ['src/output/card-sheets/*.ts'],
    tests: folder('output/card-sheets', 'sections', 'figure', 'margins', 'one-page', 'apart'),
  },
  /** Marks, seams and what is written beside lines. */
  marks: {
    mutate: [
      'src/swag/marking.ts',
      ...['marks', 'seams', 'way-marks', 'label', 'legend', 'draw-template'].map(
        (one) => `src/drawing/${one}.ts`,
      ),
    ],
    tests: [
      ...folder('drawing', 'way-marks', 'roles', 'words', 'quilt', 'legend', 'words-apart'),
      ...folder('swag', 'marking'),
      ...folder('output/pdf', 'seam-words'),
    ],
  },
  sheets: {
    mutate: ['src/output/pdf/*.ts'],
    tests: folder(
      'output/pdf',
      ...['paths', 'numbers', 'page-content', 'cover-words', 'bare-sheets', 'quilt-sheets', 'letters'],
      ...['printed-words', 'sheets', 'seam-words', 'scale'],
    ),
  },
  pagination: {
    mutate: ['src/pagination/*.ts'],
    tests: [
      ...folder('pagination', 'covering', 'lay-out', 'reach', 'ink', 'measured', 'roll', 'fewest-sheets'),
      ...folder('output/pdf', 'printed-words', 'seam-words'),
      ...folder('reference', 'paper-and-units'),
    ],
  },
  class: { mutate: ['src/output/class/*.ts', 'src/jobs/class-sheets.ts'], tests: folder('cli', 'class') },
};
