/** What can hurt is said once, and says what it should: common practice, no source; the manuals have the last word. */

import { expect, test } from 'vitest';
import { CAUTIONS } from '../../../src/output/mockup/index.ts';

test('every caution, word by word', () => {
  expect(CAUTIONS).toEqual([
    'A needle that strikes a template shatters. Use only a foot made for ruler work and a template of the thickness that suits it; the manuals of your machine and your foot have the last word.',
    'Keep fingers flat and away from the needle; stop with the needle down before you move a hand or the template. Wear eye protection; test on a scrap first.',
    'Cut paper with a sharp blade away from your body, on a mat.',
    'Printer ink can come off on fabric: do not stitch through a print that you have not tested.',
  ]);
});
