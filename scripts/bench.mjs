/**
 * Runs a benchmark: `node scripts/bench.mjs offset` runs scripts/bench-offset.ts. It is bundled first, by the Vite
 * that is here for the page, because code in one file is what a finished program runs as.
 */

import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../', import.meta.url));
const name = process.argv[2] ?? '';
if (!/^[a-z]+$/.test(name)) {
  console.error('Which benchmark? For example: node scripts/bench.mjs offset');
  process.exit(2);
}

await build({
  root,
  configFile: false,
  publicDir: false,
  logLevel: 'warn',
  build: {
    ssr: `scripts/bench-${name}.ts`,
    outDir: 'out/bench',
    emptyOutDir: false,
    target: 'node20',
    rolldownOptions: { output: { entryFileNames: `${name}.mjs` } },
  },
});
await import(pathToFileURL(`${root}out/bench/${name}.mjs`).href);
