/** The version, read from the package itself, so that it stands in one place only. */

import { readFile } from 'node:fs/promises';

export const version = async (): Promise<string> => {
  const text = await readFile(new URL('../../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
};
