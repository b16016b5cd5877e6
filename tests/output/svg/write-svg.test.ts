import { DOMParser, type Element } from '@xmldom/xmldom';
import { describe, expect, it } from 'vitest';
import { LAYERS, type StyledText } from '../../../src/drawing/index.ts';
import { arc, openPath, point, polyline } from '../../../src/geometry/index.ts';
import { writeSvg } from '../../../src/output/svg/index.ts';
import { BLACK, drawingOf } from './fixture.ts';

const parse = (text: string): Element => {
  const faults: string[] = [];
  const root = new DOMParser({ onError: (_level, message) => faults.push(message) }).parseFromString(
    text,
    'image/svg+xml',
  ).documentElement;
  expect(faults).toEqual([]);
  return root!;
};

const children = (parent: Element, name: string): Element[] =>
  Array.from(parent.childNodes).filter((n): n is Element => n.nodeName === name);

const groups = (root: Element): Map<string, Element> =>
  new Map(children(root, 'g').map((g) => [g.getAttribute('id')!, g]));

const label = (text: string, more: Partial<StyledText> = {}): StyledText => ({
  kind: 'text',
  text,
  at: point(10, 20),
  size: 4,
  align: 'start',
  angle: 0,
  color: '#000000',
  ...more,
});

const square = polyline([point(0, 0), point(100, 0), point(100, 50), point(0, 50)], true);

describe('the SVG of a drawing', () => {
  it('has one group per layer, in painting order, under the id of the layer', () => {
    const root = parse(writeSvg(drawingOf({})));
    expect(children(root, 'g').map((g) => g.getAttribute('id'))).toEqual([...LAYERS]);
  });

  it('leaves out the layers that are not wanted', () => {
    const drawing = drawingOf({
      stitch: [{ kind: 'path', path: square, stroke: BLACK }],
      notes: [{ kind: 'path', path: polyline([point(0, 0), point(500, 0)]), stroke: BLACK }],
    });
    const root = parse(writeSvg(drawing, { without: ['notes'] }));
    expect(groups(root).has('notes')).toBe(false);
    expect(root.getAttribute('width')).toBe('110.5mm');
  });

  it('is as large as the ink and the white round it, in mm, and one unit is one mm', () => {
    const drawing = drawingOf({ stitch: [{ kind: 'path', path: square, stroke: BLACK }] });
    const root = parse(writeSvg(drawing, { margin: 10 }));
    // 100 × 50 mm of path, half of 0.5 mm of line and 10 mm of white on each side.
    expect(root.getAttribute('width')).toBe('120.5mm');
    expect(root.getAttribute('height')).toBe('70.5mm');
    expect(root.getAttribute('viewBox')).toBe('-10.25 -60.25 120.5 70.5');
  });

  it('tells facts as data attributes', () => {
    const facts = { repeat: 'top 1', half: 'first', part: 'edge', breakName: '"shoulder" & co' };
    const drawing = drawingOf({ stitch: [{ kind: 'path', path: square, stroke: BLACK, facts }] });
    const path = children(groups(parse(writeSvg(drawing))).get('stitch')!, 'path')[0]!;
    expect(path.getAttribute('data-repeat')).toBe('top 1');
    expect(path.getAttribute('data-half')).toBe('first');
    expect(path.getAttribute('data-part')).toBe('edge');
    expect(path.getAttribute('data-break-name')).toBe('"shoulder" & co');
  });

  it('refuses the name of a fact that XML could not hold', () => {
    const facts = { 'a b': 'x' };
    const drawing = drawingOf({ stitch: [{ kind: 'path', path: square, stroke: BLACK, facts }] });
    expect(() => writeSvg(drawing)).toThrow('named');
  });

  it('keeps text as text, whatever it holds', () => {
    const nasty = `</text><script>alert("1")</script> & 'x' ]]> <!-- \u0007\ud800 5½″ ⅛`;
    const root = parse(writeSvg(drawingOf({ notes: [label(nasty)] }, nasty)));
    const shown = nasty.replace('\u0007\ud800', '  ');
    expect(children(groups(root).get('notes')!, 'text')[0]!.textContent).toBe(shown);
    expect(children(root, 'title')[0]!.textContent).toBe(shown);
    expect(root.getElementsByTagName('script').length).toBe(0);
  });

  it('turns a text counterclockwise by its angle about its own anchor', () => {
    const turned = label('join', { angle: Math.PI / 2, align: 'middle', bold: true });
    const root = parse(writeSvg(drawingOf({ marks: [turned] })));
    const text = children(groups(root).get('marks')!, 'text')[0]!;
    // SVG counts degrees clockwise, so a quarter turn to the left is −90.
    expect(text.getAttribute('transform')).toBe('rotate(-90 10 -20)');
    expect(text.getAttribute('text-anchor')).toBe('middle');
    expect(text.getAttribute('font-weight')).toBe('bold');
    expect(text.getAttribute('font-family')).toBe('DejaVu Sans, sans-serif');
  });

  it('fills areas by the even-odd rule, holes included', () => {
    const hole = polyline([point(10, 10), point(20, 10), point(20, 20)], true);
    const root = parse(
      writeSvg(drawingOf({ fill: [{ kind: 'area', loops: [square, hole], color: '#eeeeee' }] })),
    );
    const area = children(groups(root).get('fill')!, 'path')[0]!;
    expect(area.getAttribute('fill-rule')).toBe('evenodd');
    expect(area.getAttribute('fill')).toBe('#eeeeee');
    expect(area.getAttribute('d')?.match(/M/g)?.length).toBe(2);
  });

  it('tells lines apart by weight and dash', () => {
    const dashed = { width: 0.25, color: '#336699', dash: [3, 1.5] };
    const root = parse(writeSvg(drawingOf({ channel: [{ kind: 'path', path: square, stroke: dashed }] })));
    const path = children(groups(root).get('channel')!, 'path')[0]!;
    expect(path.getAttribute('stroke-width')).toBe('0.25');
    expect(path.getAttribute('stroke-dasharray')).toBe('3 1.5');
    expect(path.getAttribute('stroke')).toBe('#336699');
  });

  it('holds nothing that runs or is fetched, and no number that a plain reader would stumble over', () => {
    const drawing = drawingOf({
      stitch: [{ kind: 'path', path: openPath([arc(point(1e-8, -1e-12), 33.3, 1, 6)]), stroke: BLACK }],
      notes: [label('see https://example.org/x')],
    });
    const text = writeSvg(drawing);
    expect(text).not.toMatch(/href|<style|url\(|@import|<image|<use/);
    for (const d of text.matchAll(/ d="([^"]*)"/g)) expect(d[1]).toMatch(/^[MLACZ0-9. -]+$/);
    expect(text).not.toMatch(/NaN|Infinity|-0[ "]/);
  });

  it('is the same bytes for the same drawing, one element a line', () => {
    const make = (): string =>
      writeSvg(drawingOf({ stitch: [{ kind: 'path', path: square, stroke: BLACK }], notes: [label('a')] }));
    expect(make()).toBe(make());
    for (const row of make().trimEnd().split('\n'))
      expect(row.match(/<[a-z?]/g)?.length ?? 0).toBeLessThan(2);
  });

  it('refuses a drawing with a coordinate that is not finite', () => {
    const bad = polyline([point(0, 0), point(Number.POSITIVE_INFINITY, 0)]);
    expect(() => writeSvg(drawingOf({ stitch: [{ kind: 'path', path: bad, stroke: BLACK }] }))).toThrow(
      'finite',
    );
    expect(() => writeSvg(drawingOf({ notes: [label('x', { at: point(Number.NaN, 0) })] }))).toThrow();
  });
});
