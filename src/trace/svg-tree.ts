/**
 * An SVG document as a tree of its elements. The XML is read by saxes, which knows no external entities, loads nothing
 * and runs nothing; documents that declare entities of their own, or want a style sheet fetched, are refused.
 *
 * Bounds: 4 million characters, 100,000 elements, 100 deep.
 */

import { SaxesParser } from 'saxes';
import type { Problem } from '../document/index.ts';

export interface SvgNode {
  /** Its local name; of another namespace, with that in front, so that it is none of ours. */
  readonly name: string;
  /** Without namespaces; of both kinds of `href` the plain one. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly SvgNode[];
  /** Of a style element only. */
  readonly text: string;
  /** Counted from 1. */
  readonly line: number;
  readonly column: number;
}

export interface SvgTree {
  readonly root: SvgNode;
  readonly byId: ReadonlyMap<string, SvgNode>;
  readonly styles: readonly SvgNode[];
  /** The first element that changes others as time goes on. */
  readonly moving: SvgNode | undefined;
}

export type SvgTreeResult =
  | { readonly ok: true; readonly tree: SvgTree }
  | { readonly ok: false; readonly problem: Problem };

const MOST_CHARACTERS = 4_000_000;
export const MOST_ELEMENTS = 100_000;
export const MOST_DEPTH = 100;
/** Shapes that are looked at; a drawing of more is no drawing of a template. */
export const MOST_SHAPES = 5000;

export const TOO_MUCH: Problem = {
  code: 'svg-too-deep',
  message: 'the drawing holds too much',
  expected: `at most ${MOST_ELEMENTS} elements, ${MOST_SHAPES} shapes, ${MOST_DEPTH} deep`,
  hint: 'save the template alone',
};
const NOT_XML: Problem = { code: 'not-xml', message: 'this is no well-formed SVG file' };
const NOT_SVG: Problem = {
  code: 'not-svg',
  message: 'this is no SVG drawing',
  expected: 'a file that begins with <svg>',
};
const ENTITIES: Problem = {
  code: 'svg-entities',
  message: 'the drawing declares entities, which are not read',
  hint: 'save it as plain SVG',
};
const SHEET: Problem = {
  code: 'svg-style-sheet',
  message: 'the drawing takes its styles from another file, which is not read',
  hint: 'save it as plain SVG',
};

/** Thrown to stop the parser; never leaves this file. */
class Stop extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.message);
    this.problem = problem;
  }
}

/** SVG Animations 2; SMIL 3. */
const MOVING = new Set(['animate', 'animateMotion', 'animateTransform', 'discard', 'set']);

const SVG = 'http://www.w3.org/2000/svg';
const XHTML = 'http://www.w3.org/1999/xhtml';
const XLINK = 'http://www.w3.org/1999/xlink';

interface Growing extends SvgNode {
  readonly attributes: Map<string, string>;
  readonly children: SvgNode[];
  text: string;
}

export const readSvgTree = (text: string): SvgTreeResult => {
  if (text.length > MOST_CHARACTERS)
    return refuse({
      code: 'svg-too-large',
      message: 'the drawing is too large',
      expected: 'at most 4 million characters',
    });
  if (!/^\s*</.test(text)) return refuse(NOT_SVG);
  const parser = new SaxesParser({ xmlns: true });
  const open: Growing[] = [];
  const byId = new Map<string, SvgNode>();
  const styles: SvgNode[] = [];
  let root: SvgNode | undefined;
  let moving: SvgNode | undefined;
  let elements = 0;
  let [line, column] = [1, 1];
  parser.on('error', (error) => {
    throw new Stop({ ...NOT_XML, found: plain(error.message) });
  });
  parser.on('doctype', (doctype) => {
    if (doctype.includes('[')) throw new Stop(ENTITIES);
  });
  parser.on('processinginstruction', ({ target }) => {
    if (target === 'xml-stylesheet') throw new Stop(SHEET);
  });
  parser.on('opentagstart', ({ name }) => {
    // The parser stands behind the name and the character after it.
    line = parser.line;
    column = Math.max(1, parser.column - name.length - 1);
  });
  parser.on('opentag', ({ local, uri, attributes }) => {
    if (++elements > MOST_ELEMENTS || open.length >= MOST_DEPTH) throw new Stop(TOO_MUCH);
    // A file that forgets its namespace is taken for what it looks like.
    const isSvg = uri === SVG || uri === '' || (uri === XHTML && local === 'style');
    if (!root && !(isSvg && local === 'svg')) throw new Stop(NOT_SVG);
    if (uri === XHTML && local === 'link') throw new Stop(SHEET);
    const node: Growing = {
      name: isSvg ? local : `${uri} ${local}`,
      attributes: new Map(),
      children: [],
      text: '',
      line,
      column,
    };
    for (const a of Object.values(attributes)) {
      if (a.uri === '') node.attributes.set(a.local, a.value);
      else if (a.uri === XLINK && a.local === 'href' && !node.attributes.has('href'))
        node.attributes.set('href', a.value);
    }
    const id = node.attributes.get('id');
    if (id && !byId.has(id)) byId.set(id, node);
    if (node.name === 'style') styles.push(node);
    if (MOVING.has(node.name)) moving ??= node;
    root ??= node;
    open.at(-1)?.children.push(node);
    open.push(node);
  });
  const gather = (more: string): void => {
    const around = open.at(-1);
    if (around?.name === 'style') around.text += more;
  };
  parser.on('text', gather);
  parser.on('cdata', gather);
  parser.on('closetag', () => {
    open.pop();
  });
  try {
    parser.write(text).close();
  } catch (error) {
    return refuse(error instanceof Stop ? error.problem : NOT_XML);
  }
  return root ? { ok: true, tree: { root, byId, styles, moving } } : refuse(NOT_SVG);
};

const refuse = (problem: Problem): SvgTreeResult => ({ ok: false, problem });

/** The parser's words without its position and full stop. */
const plain = (message: string): string =>
  message
    .replace(/^\S*?(\d+):(\d+):\s*/, 'line $1, ')
    .replace(/\.$/, '')
    .slice(0, 120);
