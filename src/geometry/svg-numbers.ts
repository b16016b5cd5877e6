/**
 * Numbers and path data as the SVG standard writes them. Read strictly: what a browser would drop as a mistake is no
 * number here, because it then draws something else.
 */

/** SVG 2, 9.3.9: no point without a digit behind it. */
const NUMBER = /[-+]?(?:\d*\.\d+|\d+)(?:e[-+]?\d+)?/iy;
const FLAG = /[01]/y;
const BETWEEN = /[ \t\n\f\r]*,?[ \t\n\f\r]*/y;
const SPACE = /[ \t\n\f\r]*/y;
const COMMAND = /[achlmqstvz]/iy;

/** How many numbers each command takes at a time (SVG 2, 9.3). */
const TAKES: Readonly<Record<string, number>> = {
  a: 7,
  c: 6,
  h: 1,
  l: 2,
  m: 2,
  q: 4,
  s: 4,
  t: 2,
  v: 1,
  z: 0,
};

type Take = (pattern: RegExp) => string | undefined;

/** Takes from a text what stands next. */
const taker = (text: string): { readonly take: Take; readonly next: () => string } => {
  let at = 0;
  return {
    take: (pattern) => {
      pattern.lastIndex = at;
      const found = pattern.exec(text)?.[0];
      at += found?.length ?? 0;
      return found;
    },
    next: () => text.charAt(at),
  };
};

/** Numbers with white space or one comma between them; undefined where anything else stands there. */
export const readSvgNumbers = (text: string): number[] | undefined => {
  const { take, next } = taker(text);
  const numbers: number[] = [];
  take(SPACE);
  let comma = false;
  while (next() !== '' || comma) {
    const number = Number(take(NUMBER));
    if (!Number.isFinite(number)) return undefined;
    numbers.push(number);
    comma = take(BETWEEN)!.includes(',');
  }
  return numbers;
};

/** The same path data with a space between all that it says; undefined where it is not what SVG 2, 9.3.9, allows. */
export const spacedPathData = (d: string): string | undefined => {
  const { take, next } = taker(d);
  const words: string[] = [];
  take(SPACE);
  while (next() !== '') {
    const command = take(COMMAND);
    const takes = TAKES[command?.toLowerCase() ?? ''];
    if (command === undefined || takes === undefined || (words.length === 0 && !/m/i.test(command)))
      return undefined;
    words.push(command);
    take(SPACE);
    for (let i = 0; takes > 0; i++) {
      const isFlag = takes === 7 && (i % 7 === 3 || i % 7 === 4);
      const number = take(isFlag ? FLAG : NUMBER);
      if (number === undefined) return undefined;
      // Without noughts before it, which svg-pathdata takes for numbers of their own; a radius without its sign, which
      // does not count (SVG 2, 9.5.1).
      const value = takes === 7 && i % 7 < 2 ? Math.abs(Number(number)) : Number(number);
      words.push(Number.isFinite(value) ? String(value) : number);
      const comma = take(BETWEEN)!.includes(',');
      if ((i + 1) % takes === 0 && !comma && /^[a-z]?$/i.test(next())) break;
    }
  }
  return words.join(' ');
};
