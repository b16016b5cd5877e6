/**
 * A mutation that Stryker has none of: in whatever is written, one word that has an opposite becomes it, each such
 * word in its turn. A sentence that says "above" for "below" is as long and as well formed as the right one, and only
 * a test that reads what it means sees it.
 */

/** Words that a quilter would go wrong by, were the other one printed. */
const OPPOSITES = [
  ['above', 'below'],
  ['left', 'right'],
  ['top', 'bottom'],
  ['up', 'down'],
  ['up', 'along'],
  ['across', 'up'],
  ['along', 'square'],
  ['first', 'second'],
  ['first', 'last'],
  ['near', 'far'],
  ['nearer', 'farther'],
  ['nearest', 'farthest'],
  ['before', 'past'],
  ['before', 'after'],
  ['inner', 'outer'],
  ['inside', 'outside'],
  ['inward', 'outward'],
  ['towards', 'away'],
  ['clockwise', 'counterclockwise'],
  ['larger', 'smaller'],
  ['longer', 'shorter'],
  ['longest', 'shortest'],
  ['long', 'short'],
  ['more', 'fewer'],
  ['most', 'least'],
  ['start', 'end'],
  ['begin', 'end'],
  ['begins', 'ends'],
  ['start', 'stop'],
  ['heel', 'crown'],
  ['join', 'crown'],
  ['side', 'corner'],
  ['sides', 'corners'],
  ['with', 'without'],
  ['even', 'odd'],
  ['portrait', 'landscape'],
  ['in', 'mm'],
];

/** Each word with the first that stands beside it above, both ways; capitals are kept. */
const OPPOSITE = new Map();
for (const [one, other] of OPPOSITES) {
  if (!OPPOSITE.has(one)) OPPOSITE.set(one, other);
  if (!OPPOSITE.has(other)) OPPOSITE.set(other, one);
}

const WORD = /\p{L}+/gu;

/** `in` is a unit where it stands alone or behind a figure. */
const isUnit = (before, whole, behindFigure) =>
  whole === 'in' || /\d ?$/.test(before) || (behindFigure && before.trim() === '');

const opposite = (word) => {
  const other = OPPOSITE.get(word.toLowerCase());
  if (other === undefined) return undefined;
  return word[0] === word[0].toLowerCase() ? other : other[0].toUpperCase() + other.slice(1);
};

/** The text once for each word in it that has an opposite, with that one word swapped. */
const swapped = (text, behindFigure) =>
  [...text.matchAll(WORD)].flatMap(({ 0: word, index }) => {
    const other = opposite(word);
    const before = text.slice(0, index);
    if (other === undefined || (word === 'in' && !isUnit(before, text, behindFigure))) return [];
    return [before + other + text.slice(index + word.length)];
  });

/** What says a name to the program and nothing to a person: keys, types, what is imported. */
const isWritten = ({ node, parent }) =>
  !parent.type.startsWith('TS') &&
  !/Import|Export/.test(parent.type) &&
  !(
    (parent.type === 'ObjectProperty' || parent.type === 'MemberExpression') &&
    (parent.key ?? parent.property) === node
  );

/** In the shape that Stryker's own mutators have. */
export const wordSwap = {
  name: 'WordSwap',
  *mutate(path) {
    const { node } = path;
    if (path.isStringLiteral() && isWritten(path))
      for (const value of swapped(node.value, false)) yield { type: 'StringLiteral', value };
    if (!path.isTemplateLiteral()) return;
    for (const [i, quasi] of node.quasis.entries())
      for (const raw of swapped(quasi.value.raw, i > 0)) {
        const other = { type: 'TemplateElement', value: { raw, cooked: raw }, tail: quasi.tail };
        yield { ...node, quasis: node.quasis.with(i, other) };
      }
  },
};
