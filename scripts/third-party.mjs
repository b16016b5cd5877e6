/** Who wrote what a bundle holds, and under which licence: the text that goes beside it. */

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');

/** The folder of the package that a module is part of. `\0` marks what bundlers make up themselves. */
export const packageFolderOf = (id) =>
  /^\0?(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/.exec(id)?.[1];

const packageFolders = (modules) => {
  const folders = modules.flatMap((id) => packageFolderOf(id) ?? []);
  return [...new Set(folders)].sort();
};

const licenceOf = (folder) => {
  const files = readdirSync(folder)
    .filter((name) => /^(licen[cs]e|notice|copying)/i.test(name))
    .sort();
  return files.map((name) => readFileSync(join(folder, name), 'utf8').trim()).join('\n\n');
};

export const packageFolder = (name) => join(root, 'node_modules', name);

const RULE = `\n\n${'-'.repeat(80)}\n\n`;

const packageOf = (folder) => JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));

/** With what each depends on, because some are published with others' code inside. */
const withTheirs = (folders) => {
  const all = new Set(folders);
  for (const folder of all)
    for (const name of Object.keys(packageOf(folder).dependencies ?? {}))
      all.add([join(folder, 'node_modules', name), join(root, 'node_modules', name)].find(existsSync));
  return [...all].sort();
};

/** `modules` are the files that went into a bundle; `more` are packages that something was copied from. */
export const thirdParty = (modules, more = []) => {
  const parts = withTheirs([...packageFolders(modules), ...more.map(packageFolder)]).map((folder) => {
    const { name, version, license, author } = packageOf(folder);
    if (typeof license !== 'string') throw new Error(`${name} does not say its licence`);
    const by = typeof author === 'string' ? author : author?.name;
    const text = licenceOf(folder);
    return `${name} ${version} (${license}${by ? `, ${by}` : ''})${text === '' ? '' : `\n\n${text}`}`;
  });
  return `This program holds work of others, each under its own licence.${RULE}${parts.join(RULE)}\n`;
};

/** What rolldown says went into the files that it made. */
export const modulesOf = (output) =>
  output.flatMap((file) =>
    Object.entries(file.modules ?? {}).flatMap(([id, { renderedLength }]) =>
      renderedLength > 0 ? [id] : [],
    ),
  );
