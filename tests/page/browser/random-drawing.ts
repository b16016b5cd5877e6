/**
 * Random SVG drawings, as programs and people write them and as they should not: groups, inner drawings, every command
 * and shape, transforms, styles, copies, switches, clips. Each comes back the same from the same seed.
 */

type Random = () => number;

/** Numbers from 0 to 1 (mulberry32, public domain). */
const randomOf = (seed: number): Random => {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

export const randomDrawing = (seed: number): string => {
  const random = randomOf(seed);
  const chance = (p: number): boolean => random() < p;
  const between = (a: number, b: number): string => String(Math.round((a + random() * (b - a)) * 100) / 100);
  const one = <T>(...of: readonly T[]): T => of[Math.floor(random() * of.length)]!;
  const times = (n: number, make: () => string): string => Array.from({ length: n }, make).join('');
  let names = 0;
  const definitions: string[] = [];
  const styles: string[] = [];

  const keep = (): string =>
    one('none', 'xMidYMid', 'xMinYMax slice', 'xMaxYMin meet', 'xMidYMax', 'xMaxYMid slice');
  const box = (): string => `${between(-20, 20)} ${between(-20, 20)} ${between(80, 200)} ${between(80, 200)}`;
  const unit = (): string => one('', '', 'px', 'mm', 'pt');
  const size = (least: number, most: number): string => {
    const u = unit();
    if (chance(0.08)) return `${between(20, 60)}%`;
    const scale = u === 'mm' ? 0.26 : u === 'pt' ? 0.75 : 1;
    return `${between(least * scale, most * scale)}${u}`;
  };

  const transform = (): string => {
    const kinds: readonly (() => string)[] = [
      () => `translate(${between(-30, 30)},${between(-30, 30)})`,
      () => `translate(${between(-30, 30)})`,
      () => `rotate(${between(-180, 180)})`,
      () => `rotate(${between(-90, 90)} ${between(0, 90)} ${between(0, 90)})`,
      () => `scale(${between(0.6, 1.6)})`,
      () => `scale(${one('', '-')}${between(0.6, 1.6)} ${between(0.6, 1.6)})`,
      () => `skewX(${between(-40, 40)})`,
      () => `skewY(${between(-40, 40)})`,
      () =>
        `matrix(${between(0.7, 1.3)} ${between(-0.4, 0.4)},${between(-0.4, 0.4)} ${between(0.7, 1.3)} ${between(-20, 20)} ${between(-20, 20)})`,
    ];
    const list = Array.from({ length: chance(0.3) ? 2 : 1 }, () => one(...kinds)());
    return list.join(one(' ', ',', ' , '));
  };

  /** What may stand on any element; most often nothing. */
  const traits = (): string => {
    let text = chance(0.45) ? ` transform="${transform()}"` : '';
    if (chance(0.03)) text += ` transform-origin="${between(0, 90)} ${between(0, 90)}"`;
    if (chance(0.02)) text += ' transform-box="fill-box"';
    if (chance(0.04)) text += one(' display="none"', ' visibility="hidden"', ' visibility="visible"');
    if (chance(0.04)) text += one(' opacity="0"', ' opacity="0.5"', ' stroke="none"', ' stroke-width="0"');
    if (chance(0.05))
      text += ` style="${one('display:none', 'visibility: hidden', 'stroke: black; visibility:visible', 'transform: none', 'transform: rotate(20deg)', 'scale: 1.2', 'fill: red;stroke: none', 'opacity: 0 !important', 'zoom: 2', 'translate: 5px')}"`;
    if (chance(0.12)) text += ` class="${one('a', 'b', 'c', 'd', 'a b', 'e f')}"`;
    if (chance(0.02)) text += one(' clip-path="url(#clip)"', ' mask="url(#mask)"', ' filter="url(#none)"');
    if (chance(0.02)) text += one(' requiredExtensions="http://example.org/x"', ' systemLanguage="en"');
    return text;
  };

  const command = (): string => {
    const p = (): string => `${between(0, 150)} ${between(0, 150)}`;
    const q = (): string => `${between(-70, 70)},${between(-70, 70)}`;
    const flags = (): string => one('0 0 ', '01', '1 0 ', '11', '0,1,');
    const arc = (): string =>
      `${between(15, 60)} ${one(between(15, 60), '30')} ${between(-90, 90)} ${flags()}`;
    return one(
      () => `L${p()}`,
      () => `l${q()} ${q()}`,
      () => `H${between(0, 150)}`,
      () => `h${between(-70, 70)}`,
      () => `V${between(0, 150)}`,
      () => `v${between(-70, 70)}`,
      () => `C${p()} ${p()},${p()}`,
      () => `c${q()} ${q()} ${q()}`,
      () => `S${p()} ${p()}`,
      () => `s${q()} ${q()}`,
      () => `Q${p()} ${p()}`,
      () => `q${q()} ${q()}`,
      () => `T${p()}`,
      () => `t${q()}`,
      () => `A${arc()}${p()}`,
      () => `a${arc()}${q()}`,
      () => `A30 30 0 ${flags()}${p()}`,
      () => `a${one('0 20', '5 5', '-30 25')} 10 ${flags()}${q()}`,
    )();
  };

  const data = (parts = chance(0.15) ? 2 : 1): string =>
    Array.from({ length: parts }, (_, i) => {
      // A second part begins far off, so that its beginning shows.
      const move =
        i === 0
          ? `M${between(0, 150)},${between(0, 150)}`
          : one(`m${between(60, 90)} 60`, `M-150,${between(-90, 0)}`);
      return move + times(2 + Math.floor(random() * 4), command) + (chance(0.35) ? one('z', 'Z ') : '');
    }).join(' ');

  const points = (): string =>
    Array.from({ length: 4 }, () => `${between(0, 150)},${between(0, 150)}`).join(one(' ', ', '));

  /** The outline is the same width at any scale, so that it can be hit with a point. */
  const shape = (parts?: number, more = traits()): string => {
    const rest = ` id="s${names++}" vector-effect="non-scaling-stroke"${more}/>`;
    return one(
      () => `<path d="${data(parts)}"${rest}`,
      () => `<path d="${data(parts)}"${rest}`,
      () => `<path d="${data(parts)}"${rest}`,
      () => `<polyline points="${points()}"${rest}`,
      () => `<polygon points="${points()}"${rest}`,
      () =>
        `<line x1="${size(0, 60)}" y1="${size(0, 60)}" x2="${size(80, 150)}" y2="${size(80, 150)}"${rest}`,
      () =>
        `<rect x="${size(0, 60)}" y="${size(0, 60)}" width="${size(40, 99)}" height="${size(40, 99)}"${rest}`,
      () =>
        `<rect x="5" y="${size(0, 60)}" width="${size(40, 99)}" height="${size(40, 99)}" ${one(`rx="${size(3, 30)}"`, `ry="${size(3, 70)}"`, `rx="${size(3, 70)}" ry="${size(3, 30)}"`, 'rx="auto" ry="9"', 'rx="0" ry="9"')}${rest}`,
      () => `<circle cx="${size(30, 90)}" cy="${size(30, 90)}" r="${size(20, 60)}"${rest}`,
      () =>
        `<ellipse cx="${size(30, 90)}" cy="${size(30, 90)}" ${one(`rx="${size(20, 60)}" ry="${size(20, 60)}"`, 'rx="40"', 'ry="auto" rx="30"', 'rx="0" ry="20"')}${rest}`,
    )();
  };

  const inner = (inside: () => string, rest = ''): string => {
    const width = chance(0.6) ? ` width="${size(60, 150)}"` : '';
    const height = chance(0.6) ? ` height="${size(60, 150)}"` : '';
    const at = chance(0.6) ? ` x="${size(0, 40)}" y="${size(0, 40)}"` : '';
    const inBox = chance(0.6)
      ? ` viewBox="${box()}"${chance(0.4) ? ` preserveAspectRatio="${keep()}"` : ''}`
      : '';
    const over = chance(0.7) ? ' overflow="visible"' : '';
    return `<svg${at}${width}${height}${inBox}${over}${rest}>${inside()}</svg>`;
  };

  /** Chromium's box of what is turned in a copy is not a close one. */
  const straight = (): string =>
    `translate(${between(-30, 30)} 9) scale(${one('', '-')}${between(0.6, 1.6)} ${between(0.6, 1.6)})`;

  /** A copy of one shape, plainly or through groups and symbols. */
  const copy = (): string => {
    const id = `d${names++}`;
    const lone = (): string => shape(1, chance(0.3) ? ` transform="${straight()}"` : '');
    definitions.push(
      one(
        () => lone().replace(/ id="[^"]*"/, ` id="${id}"`),
        () => `<g id="${id}"${chance(0.5) ? ` transform="${straight()}"` : ''}>${lone()}</g>`,
        () =>
          `<symbol id="${id}"${chance(0.6) ? ` viewBox="${box()}"` : ''}${chance(0.3) ? ` preserveAspectRatio="${keep()}"` : ''} overflow="visible">${lone()}</symbol>`,
        () => inner(lone, ` id="${id}"`),
      )(),
    );
    const at = chance(0.7) ? ` x="${size(0, 40)}" y="${size(0, 40)}"` : '';
    const sized = chance(0.4) ? ` width="${size(60, 150)}" height="${size(60, 150)}"` : '';
    return `<use ${one('href', 'xlink:href')}="#${id}"${at}${sized}${traits()}/>`;
  };

  const item = (depth: number): string => {
    const more = (): string => items(depth - 1);
    const roll = depth > 0 ? random() : 0;
    if (roll < 0.55) return shape();
    if (roll < 0.75) return `<g${traits()}>${more()}</g>`;
    if (roll < 0.82) return inner(more, chance(0.2) ? traits() : '');
    if (roll < 0.86) {
      const first = one(
        '',
        '<foreignObject requiredExtensions="http://example.org/x"/>',
        `<g requiredExtensions="http://example.org/x">${shape()}</g>`,
      );
      return `<switch${traits()}>${first}${shape()}${shape()}</switch>`;
    }
    if (roll < 0.93) return copy();
    return one(
      () => `<defs>${shape()}</defs>`,
      () => `<symbol>${shape()}</symbol>`,
      () => `<linearGradient id="g${names++}">${shape()}</linearGradient>`,
      () => `<pattern width="9" height="9">${shape()}</pattern>`,
      () => `<marker id="m${names++}">${shape()}</marker>`,
      () => `<clipPath id="x${names++}">${shape()}</clipPath>`,
      () => `<text x="10" y="20">baluster</text>`,
      () => `<unknown>${shape()}</unknown>`,
      () => `<a>${shape()}</a>`,
      () => `<title>finial</title>`,
    )();
  };
  const items = (depth: number): string => times(1 + Math.floor(random() * 2), () => item(depth));

  /** Chromium rounds a sheet's sides to 1/64 px: these are whole px, 12.7 mm being 48 of them. */
  const whole = (least: number, most: number, step: number): string =>
    String(Math.round(Math.floor(least + random() * (most - least)) * step * 100) / 100);
  const root = one(
    () => `width="${whole(7, 20, 12.7)}mm" height="${whole(7, 20, 12.7)}mm" viewBox="${box()}"`,
    () =>
      `width="${whole(7, 20, 12.7)}mm" height="${whole(7, 20, 12.7)}mm" viewBox="${box()}" preserveAspectRatio="${keep()}"`,
    () => `width="${whole(8, 18, 0.5)}in" height="${whole(8, 16, 1.27)}cm"`,
    () => `width="${whole(300, 900, 1)}" height="${whole(300, 900, 1)}px" viewBox="${box()}"`,
    () => `viewBox="${box()}" style="width:${whole(7, 20, 12.7)}mm; height: ${whole(7, 20, 12.7)}mm"`,
    () => `width="101.6mm" height="101.6mm" viewBox="${box()}" style="width: ${whole(7, 20, 12.7)}mm"`,
    () =>
      `width="${whole(7, 20, 12.7)}mm" height="${whole(7, 20, 12.7)}mm"${chance(0.3) ? ` transform="${transform()}"` : ''}`,
  )();
  if (chance(0.5))
    styles.push(
      ...[
        '.a { visibility: hidden }',
        '.b { visibility: visible; }',
        `.c{${one('display:none', 'opacity:0', 'stroke:none', 'font-size: 3em')}}`,
        `.d, .x { ${chance(0.2) ? 'transform: scale(1.5)' : 'stroke: black'} }`,
        `path.e { ${one('visibility:hidden', 'stroke:none')} }`,
        `#s${Math.floor(random() * 4)} { visibility: hidden !important }`,
        chance(0.06) ? 'g > path { display: none }' : 'g > path { font-weight: bold }',
        '/* turned { } */ .f { visibility: visible }',
      ].filter(() => chance(0.4)),
    );
  const body = `${items(3)}${chance(0.8) ? shape() : ''}`;
  const sheet = styles.length > 0 ? `<style>${styles.join('\n')}</style>` : '';
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${root} fill="none" stroke="black" stroke-width="3">\n` +
    `${sheet}<defs><clipPath id="clip"><rect x="-20" y="-20" width="${between(80, 300)}" height="${between(80, 300)}"/></clipPath>` +
    `<mask id="mask"><rect width="50" height="50" fill="white"/></mask>${definitions.join('\n')}</defs>\n${body}\n</svg>`
  );
};

/** The same with a slip of the hand or two: a letter more, one less, or another, in the values of its attributes. */
export const slippedDrawing = (seed: number): string => {
  const random = randomOf(-seed);
  let text = randomDrawing(seed);
  for (let i = 0; i < 2; i++) {
    const places = [
      ...text.matchAll(
        /(?<= (?:d|points|transform|x|y|width|height|rx|ry|r|viewBox|style|class)="[^"]*)[^"]/g,
      ),
    ];
    // A drawing that says one of its sides only is as large as the window lets it be.
    const inside = places.filter(({ index }) => index > text.indexOf('\n'));
    const found = inside[Math.floor(random() * inside.length)];
    if (!found) return text;
    const letter = LETTERS.charAt(Math.floor(random() * LETTERS.length));
    const put = ['', letter, found[0] + letter][Math.floor(random() * 3)]!;
    text = text.slice(0, found.index) + put + text.slice(found.index + 1);
  }
  return text;
};

const LETTERS = '0019-+.,;:eE% mMlLhHzZaAcCtT()p\n';
