/** What is wrong with how a file is written (a quote left open, a tab), in words for someone who does not know YAML. */

import { type Document, isScalar, visit, type YAMLError } from 'yaml';
import type { Place, Problem } from './problem.ts';

/** The mistake that stands first in the file: those after it are mostly its consequences. */
export const firstMistake = (errors: readonly YAMLError[]): YAMLError | undefined => {
  let first: YAMLError | undefined;
  for (const e of errors) if (!first || e.pos[0] < first.pos[0]) first = e;
  return first;
};

/** Where to point: an open quote is noticed at the end of the file, but the place to look is where it opens. */
export const syntaxOffset = (error: YAMLError, parsed: Document.Parsed): number => {
  if (!error.message.startsWith('Missing closing')) return error.pos[0];
  let opened = error.pos[0];
  visit(parsed, {
    Scalar: (_, node) => {
      const isQuoted = isScalar(node) && (node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE');
      if (isQuoted && node.range) opened = node.range[0];
    },
  });
  return opened;
};

/** `before` and `text` are the file's up to the offset of the mistake and from there on. */
export const explainSyntax = (error: YAMLError, place: Place, before: string, text: string): Problem => {
  if (
    /^[\w-]+:[^\s:]/.test(text) &&
    /followed by map values|MULTILINE_IMPLICIT_KEY/.test(error.code + error.message)
  )
    return { code: 'not-yaml', message: 'a space is needed after the colon', place };
  // A line that begins where no other does is a matter of indentation, whatever the parser was waiting for.
  if (place.column === 1 && /at node end/.test(error.message))
    return { code: 'not-yaml', message: MISALIGNED, place };
  const [, message, hint] = EXPLANATIONS.find(([pattern]) =>
    pattern.test(`${error.code}: ${error.message}`),
  )!;
  const more = UNCLOSED.test(error.message) && BARE_COLOUR.test(before) ? REMARK : hint;
  return { code: 'not-yaml', message, place, ...(more !== undefined && { hint: more }) };
};

const UNCLOSED = /end with a/;
/** A colour without quotes: from its sign on the line is a remark (YAML 1.2.2, 6.6), with the bracket that closes it. */
const BARE_COLOUR = /[:,[{] +#[\da-f]{3,8}\b/i;
const REMARK = 'what follows a # is a remark: put the colour in quotes';

const MISALIGNED = 'this line is not indented like the lines it belongs to';

/** By the yaml package's code and message, the first that matches. */
const EXPLANATIONS: readonly (readonly [pattern: RegExp, message: string, hint?: string])[] = [
  [/Missing closing/, 'a quotation mark is opened here and never closed'],
  [/^TAB_AS_INDENT/, 'a tab at the start of a line', 'indent with spaces'],
  [/^MULTIPLE_DOCS/, 'a second document begins here', 'keep one to a file'],
  [/^BLOCK_AS_IMPLICIT_KEY/, 'two keys on one line', 'a text with a colon in it needs quotes'],
  [/^BAD_SCALAR_START/, 'a value cannot begin with this sign', 'put the value in quotes'],
  [/^BAD_DQ_ESCAPE/, 'a backslash in double quotes', 'use single quotes, or / in a path'],
  [/TAG|BAD_COLLECTION_TYPE/, 'a word that begins with ! has no meaning here', 'put the value in quotes'],
  [/MULTIPLE_ANCHORS|ALIAS/, 'a word that begins with & or * is in a wrong place', 'put the value in quotes'],
  [/Missing , |Missing , or :|BLOCK_IN_FLOW/, 'a comma is missing between two values in brackets'],
  [/block-seq-ind on same line/, 'a list cannot begin here', 'put its first - on a line of its own'],
  [/Unexpected ,|empty item/, 'a comma too many'],
  [UNCLOSED, 'a bracket is opened and never closed, or its end stands at the wrong indent'],
  [/Missing space after :/, 'a space is needed after the colon'],
  [/followed by map values|MULTILINE_IMPLICIT_KEY/, 'a colon and a value are missing after this key'],
  [/BAD_INDENT|same column|without - indicator/, MISALIGNED],
  [/at node end/, 'the value ends before this', 'a comma is missing, or quotes round the whole value'],
  [/RESOURCE_EXHAUSTION/, 'nested too deeply'],
  [
    /./,
    'this cannot be read as YAML or JSON',
    'look for a missing quote, bracket, colon or space just before it',
  ],
];
