/** The templates that come along, and the visitor's own, found by the names that plans use. */

import { nearestOf, type Problem, quoted } from '../../document/index.ts';
import { answersWords } from '../words/words.ts';
import type { OwnTemplate } from './messages.ts';

/** The texts of the files in profiles/, put in when the page is built. */
const FILES: Readonly<Record<string, string>> = import.meta.glob<string>('../../../profiles/*.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
});

const ENDING = /^.*\/|\.yaml$/g;

export const PROFILES: readonly OwnTemplate[] = Object.entries(FILES)
  .map(([path, text]) => ({ name: path.replaceAll(ENDING, ''), text }))
  .sort((a, b) => (a.name < b.name ? -1 : 1));

export type FoundTemplate =
  | { readonly ok: true; readonly template: OwnTemplate; readonly file: string }
  | { readonly ok: false; readonly problem: Problem };

/** A plan names a template that comes along by its name, and any other by its file's path. */
export const findTemplate = (name: string, own: readonly OwnTemplate[]): FoundTemplate => {
  const along = PROFILES.find((p) => p.name === name);
  if (along) return { ok: true, template: along, file: `${name}.yaml` };
  const mine = own.find((t) => t.name === name) ?? own.find((t) => fileOf(t.name) === fileOf(name));
  if (mine) return { ok: true, template: mine, file: fileOf(name) };
  const near = nearestOf(
    name,
    PROFILES.map((p) => p.name),
  );
  const isFile = /[\\/]|\.(ya?ml|json)$/i.test(name);
  return {
    ok: false,
    problem: {
      code: 'unknown-template',
      key: 'template',
      message: isFile ? answersWords.fileNotGiven : answersWords.noTemplate,
      found: quoted(name),
      hint: isFile
        ? answersWords.dropFile
        : near
          ? answersWords.didYouMean({ name: quoted(near) })
          : answersWords.chooseBelow,
    },
  };
};

/** The file's own name, without its folders. */
export const fileOf = (path: string): string => path.replace(/^.*[\\/]/, '');
