/**
 * Builds the program and the library into a few files that need no other package, but for the canvas, which is
 * compiled for each kind of computer. Loading 300 small files took longer than most of what they do.
 *
 *   node scripts/build-program.mjs [FOLDER [cli/FILE …]]     into dist, or the folder named; tests ask for files of
 *                                                            src/cli that they want to load alone
 *
 * cli/bin.js is the program, index.js the library, parts/ what they share and load when it is needed, fonts/ what
 * PDF and PNG are written with. Names are kept as they are in the source, so that a fault can be found.
 */

import { chmodSync, copyFileSync, mkdirSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { build } from 'vite';
import { modulesOf, packageFolder, thirdParty } from './third-party.mjs';

const root = join(import.meta.dirname, '..');

/** As the bundler names files. */
const source = `${realpathSync(root).replaceAll('\\', '/')}/src/`;

const FONTS = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'];

/**
 * fontkit unpacks the dictionary of WOFF2 and four tables of Unicode when it is loaded, a tenth of what a mockup takes.
 * No font of ours is packed so, which leaves the dictionary out; the tables are for scripts other than Latin, and are
 * unpacked when one is met.
 */
const lateTables = {
  name: 'late-tables',
  transform(code, id) {
    if (!/fontkit\.es\.js$/.test(id)) return undefined;
    let found = 0;
    const replaced =
      (by) =>
      (...match) => {
        found++;
        return by(...match);
      };
    const late = code
      .replace(
        /^dictionary\.init\(BrotliDecompressBuffer\);$/m,
        replaced(() => ''),
      )
      .replace(
        /^var (trieData(?:\$\d)?) = (pako\.inflate\(.*\));$/gm,
        replaced((_, name, made) => `var ${name} = function () { return ${made}; };`),
      )
      .replace(
        /^var (trie(?:\$\d)?) = new unicodeTrie\((trieData(?:\$\d)?)\);$/gm,
        replaced(
          (_, name, data) =>
            `var ${name} = { get: function (c) { return (this.made = this.made || new unicodeTrie(${data}())).get(c); } };`,
        ),
      );
    if (found !== 9) throw new Error('fontkit has changed: see what it unpacks when it is loaded');
    return { code: late, map: null };
  },
};

/**
 * paper makes its hundred classes when it is loaded, a tenth of what `fit` takes, which asks for none of them. They are
 * made when the first is asked for.
 */
const PAPER = 'paper/dist/paper-core.js';
const latePaper = {
  name: 'late-paper',
  enforce: 'pre',
  resolveId: (name, importer) => (name === PAPER && importer?.startsWith(source) ? '\0late-paper.cjs' : null),
  load: (id) =>
    id === '\0late-paper.cjs'
      ? `module.exports = { get PaperScope() { return require(${JSON.stringify(join(root, 'node_modules', PAPER))}).PaperScope; } };`
      : null,
};

const buildProgram = async (out, alone = []) => {
  const [{ output }] = [
    await build({
      root,
      configFile: false,
      logLevel: 'warn',
      plugins: [lateTables, latePaper],
      ssr: { noExternal: true, external: ['@napi-rs/canvas'] },
      build: {
        ssr: true,
        write: false,
        target: 'es2023',
        minify: false,
        rolldownOptions: {
          input: {
            'cli/bin': join(root, 'src/cli/bin.ts'),
            index: join(root, 'src/index.ts'),
            'parts/schemas': join(root, 'scripts/schemas.ts'),
            ...Object.fromEntries(alone.map((name) => [name, join(root, `src/${name}.ts`)])),
          },
          // Our own modules do nothing but define; so what is not called is left out, and with it what only it needs.
          treeshake: { moduleSideEffects: (id) => !id.startsWith(source) || id.endsWith('/cli/bin.ts') },
          // Everything lies two folders below the package, as the source does: its own files are found from there.
          output: { entryFileNames: '[name].js', chunkFileNames: 'parts/[name]-[hash].js' },
        },
      },
    }),
  ].flat();
  for (const name of ['cli', 'parts', 'fonts', 'index.js'])
    rmSync(join(out, name), { recursive: true, force: true });
  const write = (name, content) => {
    mkdirSync(dirname(join(out, name)), { recursive: true });
    writeFileSync(join(out, name), content);
  };
  for (const { fileName, code } of output) write(fileName, code);
  // npm does this when it links a program, but not when its cache holds the link already: somebody who cloned again
  // into the same folder was told "Permission denied".
  chmodSync(join(out, 'cli/bin.js'), 0o755);
  const fonts = packageFolder('dejavu-fonts-ttf');
  mkdirSync(join(out, 'fonts'), { recursive: true });
  for (const file of FONTS) copyFileSync(join(fonts, 'ttf', file), join(out, 'fonts', file));
  write('THIRD-PARTY.txt', thirdParty(modulesOf(output), ['dejavu-fonts-ttf']));
};

const [, , folder = join(root, 'dist'), ...alone] = process.argv;
await buildProgram(resolve(folder), alone);
