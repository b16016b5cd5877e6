/**
 * What applies to an element of a drawing: its style, the drawing's own style sheets, and attributes that are
 * properties (SVG 2, 6.6; CSS Cascading 4, 6.1). Of selectors those are followed that drawing programs write: names of
 * elements, classes and ids. What could move or hide a shape and is written otherwise is refused.
 */

import { NotFollowed, shown } from './svg-fault.ts';
import type { SvgNode } from './svg-tree.ts';

/** A property's value on one element, in lower case but for what stands in url(). */
export type Declared = (property: string) => string | undefined;

/** Followed, and on the list of attributes that are properties (SVG 2, 6.6). */
const ATTRIBUTES = new Set([
  'clip-path',
  'display',
  'fill',
  'fill-opacity',
  'filter',
  'mask',
  'opacity',
  'overflow',
  'stroke',
  'stroke-opacity',
  'stroke-width',
  'transform-origin',
  'visibility',
]);

/** Followed, or refused where they say other than these values; nothing else changes where a shape is, or whether. */
const HARMLESS: Readonly<Record<string, readonly string[]>> = {
  // CSS Transforms 1 and 2, Motion Path 1, CSS Viewport 1.
  translate: ['none'],
  rotate: ['none'],
  scale: ['none'],
  offset: ['none'],
  'offset-path': ['none'],
  zoom: ['1', 'normal', '100%'],
  // CSS Animations 1: a still picture is read.
  animation: ['none'],
  'animation-name': ['none'],
  // SVG 2, 8.1 and chapter 7: geometry as properties.
  d: [],
  x: [],
  y: [],
  cx: [],
  cy: [],
  r: [],
  rx: [],
  ry: [],
  'inline-size': ['auto'],
  'block-size': ['auto'],
  'mask-image': ['none'],
  'content-visibility': ['visible'],
  all: [],
};

/** Of the drawing itself only: what else decides how large its box is (CSS Sizing 3 and 4, CSS Logical Properties 1). */
const BOX = [
  'aspect-ratio',
  'box-sizing',
  'contain',
  ...['min', 'max'].flatMap((m) => ['width', 'height', 'inline-size', 'block-size'].map((p) => `${m}-${p}`)),
];
const NO_BOX = ['none', 'auto', '0', 'content-box'];

const FOLLOWED = new Set([
  ...ATTRIBUTES,
  ...Object.keys(HARMLESS),
  ...BOX,
  'transform',
  'transform-box',
  'width',
  'height',
]);

interface Declaration {
  readonly property: string;
  readonly value: string;
  readonly important: boolean;
}

interface Rule {
  readonly type: string | undefined;
  readonly ids: readonly string[];
  readonly classes: readonly string[];
  readonly order: number;
  readonly declarations: readonly Declaration[];
}

/** Rules by the narrowest name in their selector, so that an element meets only those that may be its own. */
export interface StyleSheet {
  readonly rules: Map<string, Rule[]>;
  count: number;
}

export const emptySheet = (): StyleSheet => ({ rules: new Map(), count: 0 });

const MOST_RULES = 2000;

const unreadable = (found: string): NotFollowed =>
  new NotFollowed({
    code: 'svg-style',
    message: 'a style sheet cannot be followed',
    found: shown(found.trim()),
    hint: 'save the drawing as plain SVG, with attributes in place of style sheets',
  });

/** One that is not closed goes on to the end (CSS Syntax 3, 4.3.2). */
const COMMENT = /\/\*[\s\S]*?(?:\*\/|$)/g;
const NAME = '-?[_a-z\\u0080-\\uffff][-\\w\\u0080-\\uffff]*';
const SELECTOR = new RegExp(`^(\\*|${NAME})?((?:[.#]${NAME})*)$`, 'i');

/** What a style element holds, added to those before it. Throws NotFollowed. */
export const addStyleSheet = (sheet: StyleSheet, { text, attributes }: SvgNode): void => {
  const [type, media] = [attributes.get('type') ?? '', attributes.get('media') ?? ''];
  // Another kind of sheet is not for browsers (SVG 2, 6.3).
  if (!/^(?:text\/css)?$/i.test(type)) return;
  if (!/^\s*(?:all|screen)?\s*$/i.test(media)) throw unreadable(`media="${media}"`);
  const plain = text
    .replace(COMMENT, ' ')
    .replace(/<!--|-->/g, ' ')
    .replace(/@font-face\s*\{[^{}]*\}/gi, ' ')
    .replace(/@charset [^;{]*;/gi, ' ');
  const odd =
    /[@\\]/.exec(plain) ?? [...plain.matchAll(/"[^"]*"|'[^']*'/g)].find(([quoted]) => /[{};]/.test(quoted));
  if (odd) throw unreadable(plain.slice(odd.index));
  let read = 0;
  for (const [whole, selectors, body] of plain.matchAll(/([^{}]*)\{([^{}]*)\}/gy)) {
    read += whole.length;
    const declarations = declarationsOf(body!).filter(({ property }) => FOLLOWED.has(property));
    if (declarations.length > 0)
      for (const s of selectors!.split(',')) addRule(sheet, s.trim(), declarations);
  }
  if (plain.slice(read).trim() !== '') throw unreadable(plain.slice(read));
};

const addRule = (sheet: StyleSheet, selector: string, declarations: readonly Declaration[]): void => {
  const found = selector === '' ? null : SELECTOR.exec(selector);
  if (!found || sheet.count >= MOST_RULES) throw unreadable(selector);
  const [, type, rest = ''] = found;
  const names = rest.match(/[.#][^.#]+/g) ?? [];
  const rule: Rule = {
    type: type === '*' ? undefined : type,
    ids: names.filter((n) => n.startsWith('#')).map((n) => n.slice(1)),
    classes: names.filter((n) => n.startsWith('.')).map((n) => n.slice(1)),
    order: sheet.count++,
    declarations,
  };
  const key = names[0] ?? rule.type ?? '*';
  const those = sheet.rules.get(key);
  if (those) those.push(rule);
  else sheet.rules.set(key, [rule]);
};

/** Text in quotes and brackets is one; a lone quote or bracket is a mistake. */
const TOKEN = /"[^"]*"|'[^']*'|\([^()]*\)|;|[^;"'()]+|[\s\S]/g;

const declarationsOf = (text: string): readonly Declaration[] => {
  const plain = text.replace(COMMENT, ' ');
  const parts: string[][] = [[]];
  for (const [token] of plain.matchAll(TOKEN)) {
    if (token === ';') parts.push([]);
    else if (/^["'()]$/.test(token) || /[\\{}]/.test(token)) throw unreadable(plain);
    else parts.at(-1)!.push(token);
  }
  return parts.flatMap((tokens) => {
    const part = tokens.join('');
    const colon = part.indexOf(':');
    if (colon < 0) return [];
    const value = part.slice(colon + 1).trim();
    return [
      {
        property: part
          .slice(0, colon)
          .trim()
          .toLowerCase()
          .replace(/^-webkit-/, ''),
        value: tidy(value.replace(/!\s*important$/i, '')),
        important: /!\s*important$/i.test(value),
      },
    ];
  });
};

/** Names are compared in lower case; what url() names is not. */
const tidy = (value: string): string => (/url\(/i.test(value) ? value : value.toLowerCase()).trim();

const classesOf = (node: SvgNode): readonly string[] =>
  (node.attributes.get('class') ?? '').split(/[ \t\n\f\r]+/).filter((c) => c !== '');

/** Throws NotFollowed where its own style cannot be read. */
export const declaredOf = (node: SvgNode, sheet: StyleSheet): Declared => {
  const [id, style] = [node.attributes.get('id'), node.attributes.get('style')];
  const classes = classesOf(node);
  const has = new Set(classes);
  const keys = new Set([...(id ? [`#${id}`] : []), ...classes.map((c) => `.${c}`), node.name, '*']);
  const rules = [...keys]
    .flatMap((key) => sheet.rules.get(key) ?? [])
    .filter(
      (rule) =>
        (rule.type === undefined || rule.type === node.name) &&
        rule.ids.every((i) => i === id) &&
        rule.classes.every((c) => has.has(c)),
    )
    .sort((a, b) => weightOf(a) - weightOf(b) || a.order - b.order);
  const winners = new Map<string, Declaration>();
  for (const declaration of [
    ...rules.flatMap((rule) => rule.declarations),
    ...(style === undefined ? [] : declarationsOf(style)),
  ]) {
    if (winners.get(declaration.property)?.important && !declaration.important) continue;
    winners.set(declaration.property, declaration);
  }
  return (property) => {
    const value = winners.get(property)?.value;
    if (value !== undefined || !ATTRIBUTES.has(property)) return value;
    const attribute = node.attributes.get(property);
    return attribute === undefined ? undefined : tidy(attribute);
  };
};

/** Selectors 4, 17: ids before classes before names. */
const weightOf = ({ ids, classes, type }: Rule): number =>
  ids.length * 1e6 + classes.length * 1e3 + (type === undefined ? 0 : 1);

/** Throws NotFollowed where a style puts or sizes the element in a way that is not followed. */
export const refuseUnfollowed = (declared: Declared, isDrawing: boolean): void => {
  const check = (property: string, harmless: (value: string) => boolean): void => {
    const value = declared(property);
    if (value === undefined || harmless(value)) return;
    throw new NotFollowed({
      code: 'svg-style-transform',
      message: 'a style turns, moves or scales a part of the drawing, and such styles are not read',
      found: shown(`${property}: ${value}`),
      hint: 'save it as plain SVG, with transform as an attribute',
    });
  };
  for (const [property, values] of Object.entries(HARMLESS)) check(property, (v) => values.includes(v));
  check('transform', (v) => v === 'none');
  if (isDrawing) for (const property of BOX) check(property, (v) => NO_BOX.includes(v));
  else for (const property of ['width', 'height']) check(property, (v) => v === 'auto');
};
