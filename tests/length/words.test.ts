import { describe, expect, it } from 'vitest';
import { wordsOf } from '../../src/length/index.ts';

describe('where a line may break', () => {
  it('keeps a mixed number and its unit in one word', () => {
    expect(wordsOf('crowns 7 1/8 in. Then 12 mm, or 3 in, along')).toEqual([
      'crowns',
      '7 1/8 in.',
      'Then',
      '12 mm,',
      'or',
      '3 in,',
      'along',
    ]);
  });

  it('keeps nothing else together', () => {
    expect(wordsOf(' 5  swags\nof 8 inside, 3 made ')).toEqual([
      '5',
      'swags',
      'of',
      '8',
      'inside,',
      '3',
      'made',
    ]);
    expect(wordsOf('sections 1 2 1')).toEqual(['sections', '1', '2', '1']);
    expect(wordsOf('')).toEqual([]);
  });
});
