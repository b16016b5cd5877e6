/**
 * Keeps of the declarations that TypeScript wrote into dist/types what the library's entry leads to, name by name. The
 * rest tells of packages that are not installed with ours, and would not be found by who checks types.
 */

import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const folder = join(import.meta.dirname, '../dist/types');
const declarations = (file) => file.replace(/(\.d)?\.(ts|js)$/, '.d.ts');

/** `export { a, type B as C } from './x.ts'` and the like: what is taken, under which name, and from where. */
const LINKS = /^(import|export)( type)? \{([^}]*)\} from '(\.[^']+)';\n?/gm;
const linksOf = (file, text) =>
  [...text.matchAll(LINKS)].map(([, kind, , names, from]) => ({
    kind,
    from: declarations(join(dirname(file), from)),
    names: names
      .split(',')
      .map((name) => name.trim())
      .filter((name) => name !== '')
      .map((name) => {
        const [taken, given = taken] = name.replace(/^type /, '').split(' as ');
        return { name, taken, given };
      }),
  }));

const files = new Map();
const read = (file) => {
  let known = files.get(file);
  if (!known) {
    const text = readFileSync(join(folder, file), 'utf8');
    known = { text, links: linksOf(file, text), kept: new Set(), whole: false };
    files.set(file, known);
  }
  return known;
};

/** A name that a file passes on leads to where it comes from; a name of its own needs the whole file. */
const keep = (file, name) => {
  const known = read(file);
  if (known.kept.has(name)) return;
  known.kept.add(name);
  const passed = known.links.filter(
    (link) => link.kind === 'export' && link.names.some((n) => n.given === name),
  );
  for (const { from, names } of passed) keep(from, names.find((n) => n.given === name).taken);
  if (passed.length > 0 || known.whole) return;
  known.whole = true;
  for (const link of known.links)
    if (link.kind === 'import') for (const { taken } of link.names) keep(link.from, taken);
  for (const [, from, name] of known.text.matchAll(/import\("(\.[^"]+)"\)\.(\w+)/g))
    keep(declarations(join(dirname(file), from)), name);
};

for (const { names } of read('index.d.ts').links) for (const { given } of names) keep('index.d.ts', given);

for (const file of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
  if (!file.endsWith('.ts')) continue;
  const known = files.get(file);
  if (!known) {
    rmSync(join(folder, file));
    continue;
  }
  const text = known.text.replace(LINKS, (line, kind, type = '', names, from) => {
    if (kind === 'import') return line;
    const kept = names.split(',').filter((name) =>
      known.kept.has(
        name
          .trim()
          .replace(/^type /, '')
          .replace(/^.* as /, ''),
      ),
    );
    return kept.length > 0 ? `export${type} {${kept.join(',').trimEnd()} } from '${from}';\n` : '';
  });
  writeFileSync(join(folder, file), text);
}
