/** The version, read from the package itself, so that it stands in one place only. */

import { readFile } from 'node:fs/promises';
import { ownFile } from './own-files.ts';

export const version = async (): Promise<string> => {
  const text = await readFile(ownFile('package.json'), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
};
