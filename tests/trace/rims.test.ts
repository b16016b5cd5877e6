/** Acrylic as it looks in pictures, rulers beside it, and lines that touch the one round it: by what was drawn here. */

import { createCanvas, type SKRSContext2D } from '@napi-rs/canvas';
import { describe, expect, test } from 'vitest';
import { templateFromTrace } from '../../src/jobs/traced-template.ts';
import { type Marks, type Picture, type Traced, tracePicture } from '../../src/trace/index.ts';

/** Pixels a mm: 254 dots per inch. */
const SCALE = 10;
const SIZE = { width: 1700, height: 1100 };

/** 120 mm wide, its back 50 mm below two humps that meet in a notch, each a quarter circle's chord high; y down, mm. */
const template = (context: SKRSContext2D): void => {
  context.beginPath();
  context.moveTo(25, 80);
  context.lineTo(25, 30);
  context.arc(55, 60, 30 * Math.SQRT2, (-3 * Math.PI) / 4, -Math.PI / 4);
  context.arc(115, 60, 30 * Math.SQRT2, (-3 * Math.PI) / 4, -Math.PI / 4);
  context.lineTo(145, 80);
  context.closePath();
};
const CORNERS = [
  [25, 80],
  [25, 30],
  [85, 30],
  [145, 30],
  [145, 80],
] as const;

type Draw = (context: SKRSContext2D) => void;
const line = (context: SKRSContext2D, colour: string, wide: number): void => {
  [context.strokeStyle, context.lineWidth, context.lineJoin] = [colour, wide, 'miter'];
  context.stroke();
};
/** A line just inside the edge. */
const rim = (context: SKRSContext2D, colour: string, wide: number): void => {
  context.save();
  template(context);
  context.clip();
  line(context, colour, 2 * wide);
  context.restore();
};
const fill = (context: SKRSContext2D, colour: string): void => {
  template(context);
  context.fillStyle = colour;
  context.fill();
};
/** Across the template from edge to edge, and square to that from the back up into a hump. */
const etch = (context: SKRSContext2D, colour: string): void => {
  for (const [from, to] of [
    [
      { x: 25, y: 45 },
      { x: 145, y: 45 },
    ],
    [
      { x: 40, y: 75 },
      { x: 40, y: 21 },
    ],
  ] as const) {
    context.beginPath();
    context.moveTo(from.x, from.y);
    context.lineTo(to.x, to.y);
    line(context, colour, 0.5);
  }
};

const pictureOf = (ground: string, draw: Draw): Picture => {
  const { width, height } = SIZE;
  const canvas = createCanvas(width, height);
  const context = canvas.getContext('2d');
  context.fillStyle = ground;
  context.fillRect(0, 0, width, height);
  context.scale(SCALE, SCALE);
  draw(context);
  const { data } = context.getImageData(0, 0, width, height);
  return { width, height, grey: Uint8Array.from({ length: width * height }, (_, i) => data[4 * i]!) };
};

const traced = (picture: Picture, said: { readonly marks?: Marks; readonly side?: 'middle' } = {}) => {
  const result = tracePicture(picture, {
    tolerance: 0.03,
    side: said.side,
    pixelsPerMm: SCALE,
    marks: said.marks,
    sheetScale: { x: 1, y: 1 },
  });
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  const made = templateFromTrace(result.traced, {
    picture: 'scan.png',
    fileName: 'scan.yaml',
    title: 'Corbel',
    units: 'mm',
    choice: {},
  });
  if (!made.ok) throw new Error(JSON.stringify(made.problem));
  return { ...made, traced: result.traced };
};

/** How far the drawn corner lies from its corner of the outline that is off most, mm. */
const offBy = ({ outline, toPixels }: Traced): number => {
  expect(outline.corners).toHaveLength(CORNERS.length);
  const found = outline.corners.map((c) => toPixels(c.point));
  return Math.max(
    ...CORNERS.map(([x, y]) => Math.min(...found.map((p) => Math.hypot(p.x / SCALE - x, p.y / SCALE - y)))),
  );
};

describe('the rim of acrylic', () => {
  test('is light on dark ground, and its outer side is the edge, whatever etched lines touch it', () => {
    const picture = pictureOf('rgb(28,28,30)', (context) => {
      fill(context, 'rgb(66,70,74)');
      etch(context, 'rgb(170,175,178)');
      rim(context, 'rgb(225,235,238)', 1.2);
    });
    const { traced: found, words, doubts } = traced(picture);
    expect(offBy(found)).toBeLessThan(0.15);
    expect(found.side).toBe('outer');
    expect(words).toContain(
      'the line looks like the rim of acrylic, for it is light on dark ground: its outer side was taken',
    );
    expect(doubts).toEqual([]);
    // Where she asks for the middle there is none: it was drawn through empty ground, 20 mm above the edge.
    const asked = traced(picture, { side: 'middle' });
    expect(offBy(asked.traced)).toBeLessThan(0.15);
    expect(asked.doubts).toContainEqual(
      expect.stringMatching(
        /^unsure: other lines touch the line round the template, as near \d+,\d+ in the picture, so its outer side was taken/,
      ),
    );
  });

  test('is a dark line round what is darker than the paper', () => {
    const picture = pictureOf('rgb(235,235,235)', (context) => {
      fill(context, 'rgb(205,205,205)');
      rim(context, 'rgb(70,70,70)', 0.8);
    });
    const { traced: found, words } = traced(picture);
    expect(offBy(found)).toBeLessThan(0.15);
    expect(words).toContain(
      'the line looks like the rim of acrylic, for what it encloses is darker than the paper: its outer side was taken',
    );
  });

  test('is the outline where a bright band lies between it and the body', () => {
    const picture = pictureOf('rgb(232,232,232)', (context) => {
      fill(context, 'rgb(150,150,150)');
      rim(context, 'rgb(252,252,252)', 1.2);
      rim(context, 'rgb(94,94,94)', 0.3);
    });
    const { traced: found, words } = traced(picture);
    expect(offBy(found)).toBeLessThan(0.15);
    expect(words.join()).not.toMatch(/left out/);
  });
});

describe('a drawn line', () => {
  const drawn = (also: Draw) =>
    pictureOf('rgb(240,240,240)', (context) => {
      template(context);
      line(context, 'rgb(50,50,50)', 0.6);
      also(context);
    });

  test('has its middle taken, and nothing is said of rims', () => {
    const { traced: found, words, doubts } = traced(drawn(() => {}));
    expect(offBy(found)).toBeLessThan(0.15);
    expect(found.side).toBe('middle');
    expect(words.join()).not.toMatch(/rim of acrylic/);
    expect(doubts).toEqual([]);
  });

  test('that others touch has none: its outer side is taken, with the place', () => {
    const { traced: found, doubts } = traced(drawn((context) => etch(context, 'rgb(50,50,50)')));
    // Half the line's width, more at a sharp corner.
    expect(offBy(found)).toBeLessThan(0.6);
    expect(doubts.join()).toMatch(/other lines touch the line round the template/);
  });

  // Marks as a person taps them: on the ruler, 100 mm apart.
  test.each([
    ['on its paper', 'rgb(240,240,240)', 0.15],
    // The line is then what parts two light patches; of these the inner one is taken.
    ['on paper on a dark table', 'rgb(60,45,35)', 0.6],
  ])('is the template, and not the ruler beside it, %s', (_, ground, off) => {
    const picture = pictureOf(ground, (context) => {
      context.fillStyle = 'rgb(240,240,240)';
      context.fillRect(5, 5, 160, 100);
      template(context);
      line(context, 'rgb(50,50,50)', 0.6);
      context.fillStyle = 'rgb(150,120,70)';
      context.fillRect(20, 88, 130, 14);
    });
    const marks: Marks = [
      { x: 300, y: 920 },
      { x: 1300, y: 920 },
    ];
    const { traced: found, words, doubts } = traced(picture, { marks });
    expect(offBy(found)).toBeLessThan(off);
    expect(words[0]).toMatch(/ in a picture of 254 dots per inch by its two marks$/);
    expect(doubts).toContainEqual(
      expect.stringMatching(/^unsure: two marks tell the size along one line only/),
    );
  });
});

test('what has an outline as long as a comb’s is no template', () => {
  const picture = pictureOf('rgb(240,240,240)', (context) => {
    context.fillStyle = 'rgb(50,50,50)';
    context.fillRect(10, 60, 150, 40);
    for (let x = 10; x < 159; x += 1.5) context.fillRect(x, 10, 0.75, 60);
  });
  expect(() => traced(picture)).toThrow(/the shape's outline is too ragged for a template/);
});
