/**
 * Builds the page for browsers into dist/page: plain scripts that also run from a folder on disk, where browsers
 * refuse modules, workers by address and fetch. The two workers are functions that the page can start either way. What
 * the page opens later is a script too, which takes from the first whatever is in that already.
 *
 * Nothing is taken from elsewhere, and the list for the service worker is made from what was written.
 *
 * `build-page.mjs [FOLDER [LANGUAGE]]`: where it is written, and the file that has another language's words.
 */

import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { oneFile } from './one-file.mjs';
import { modulesOf, packageFolderOf, thirdParty } from './third-party.mjs';

const root = fileURLToPath(new URL('../', import.meta.url));
const source = `${root}src/page/`;
const out = process.argv[2] ? `${resolve(process.argv[2])}/` : `${root}dist/page/`;

rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });

const modules = [];

/**
 * The page checks what it reads by schemas, and never writes one for editors: what zod has for that is left out, each of
 * its functions put in place by one that does nothing. So is what yaml has for kinds of values that no reader asks for.
 */
const withoutSchemaWriting = {
  name: 'without-schema-writing',
  load(id) {
    if (!UNWRITTEN.test(id.replaceAll('\\', '/'))) return undefined;
    const exported = /^export (?:(?:const|function|class) (\w+)|\{ (.*) \})/gm;
    return [...readFileSync(id, 'utf8').matchAll(exported)]
      .flatMap(([, one, listed]) => one ?? listed.split(', ').filter((name) => !name.includes(' ')))
      .map((name) => `export const ${name} = () => undefined;`)
      .join('\n');
  },
  // What our own schemas say for editors goes with it, and all that knows addresses and keys, which none of them asks for.
  transform(code, id) {
    if (/\bzod[\\/]v4[\\/]core[\\/]regexes\.js$/.test(id))
      return code.replace(UNASKED, 'export const $1 = /$$^/;');
    if (/\bzod[\\/]v4[\\/]locales[\\/]en\.js$/.test(id))
      return code.replace(/const FormatDictionary = \{[^}]*\};/, 'const FormatDictionary = {};');
    if (/\bzod[\\/]v4[\\/]classic[\\/]schemas\.js$/.test(id)) return code.replace(KIND_OF_TEXT, '');
    // The page's policy lets no text become code; zod only tries whether it may, and Firefox writes that down as an error.
    if (/\bzod[\\/]v4[\\/]core[\\/](schemas|util)\.js$/.test(id))
      return code.replace(/\b(core\.)?globalConfig\.jitless\b/, 'true');
    if (!/[\\/]src[\\/]plan[\\/]|[\\/]src[\\/]template[\\/]/.test(id)) return undefined;
    return code
      .replace(new RegExp(String.raw`\.meta\(\{\s*description:\s*${WORDS},?\s*\}\)`, 'g'), '')
      .replace(new RegExp(String.raw`(?<=[{,]\s*)description:\s*${WORDS},?`, 'g'), '')
      .replace(
        new RegExp(String.raw`((?:choice\(\s*\[[^\]]*\],|spotSchema\(|sides\()\s*)${WORDS}`, 'g'),
        "$1''",
      );
  },
};

/** Of zod what writes schemas; of yaml the kinds of values that no reader here asks it for (`resolveKnownTags`). */
const UNWRITTEN =
  /\b(zod\/v4\/core\/(json-schema-processors|to-json-schema)|yaml\/browser\/dist\/schema\/(json\/schema|yaml-1\.1\/(binary|omap|pairs|schema|set|timestamp)))\.js$/;

/** A text in quotes, or several that are put together. */
const QUOTED = '(?:\'[^\'\\n]*\'|"[^"\\n]*"|`[^`]*`)';
const WORDS = String.raw`${QUOTED}(?:\s*\+\s*${QUOTED})*`;

/** Kinds of text that a plan or a template never holds; a schema that asked for one would refuse all. */
const UNASKED =
  /^(?:export )?const (dateSource|cuid2?|ulid|xid|ksuid|nanoid|duration|guid|email|ipv[46]|cidrv[46]|base64(?:url)?|e164) = [/`].*[/`]u?;$/gm;

/** How a text's schema is asked for one of them. */
const KIND_OF_TEXT =
  /^ +\w+\(params\) \{\s*return this\.check\((?:core|iso)\._?\w+\((?:Zod\w+, )?params\)\);\s*\},?$/gm;

/** Puts another language in the place of English. */
const language = process.argv[3] && resolve(process.argv[3]);
const speaking = {
  name: 'speaking',
  enforce: 'pre',
  resolveId: (name, from) =>
    language && name === './english/index.ts' && from.endsWith('words.ts') ? language : undefined,
};

/** One entry as one script without imports. Returns its text, its modules, and the style sheet's text where it has one. */
const bundle = async (entry, more = [], treeshake = {}) => {
  const built = await build({
    root,
    configFile: false,
    logLevel: 'warn',
    plugins: [withoutSchemaWriting, speaking, ...more],
    define: { 'process.env.NODE_ENV': '"production"' },
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    build: {
      write: false,
      target: 'es2023',
      cssMinify: true,
      modulePreload: false,
      lib: { entry: `${source}${entry}`, formats: ['iife'], name: 'swagwright', cssFileName: 'page' },
      // Our own modules do nothing but define; so what is not called is left out, and with it what only it needs.
      rolldownOptions: {
        treeshake: {
          moduleSideEffects: (id) => /[\\/]src[\\/]page[\\/]|\.css$/.test(id),
          ...treeshake,
        },
        output: { codeSplitting: false },
      },
    },
  });
  const files = [built].flat().flatMap((b) => b.output);
  modules.push(...modulesOf(files));
  const text = (ending) => files.find((f) => f.fileName.endsWith(ending));
  const held = Object.entries(text('.js').modules).filter(([, { renderedLength }]) => renderedLength > 0);
  return { script: text('.js').code, style: text('.css')?.source, held: new Map(held) };
};

/** As `swagwright open --save` and the page ask for it. */
const ONE_FILE = 'swagwright.html';

const write = (name, content) => writeFileSync(out + name, content);

/** What each module exports, as its bundler has read it. */
const exportsOf = new Map();
const noted = {
  name: 'noted',
  buildEnd() {
    for (const id of this.getModuleIds()) exportsOf.set(id, this.getModuleInfo(id).exports);
  },
};

const { held: ofPage } = await bundle('main.tsx', [noted]);
const { held: ofQuick } = await bundle('quick-worker.ts', [noted]);

/** What page and quick worker hold of packages that are in both stands once, in a script that both start with. */
const holds = (held, folder) => [...held.keys()].some((id) => packageFolderOf(id) === folder);
const packages = [...new Set([...ofPage.keys()].flatMap((id) => packageFolderOf(id) ?? []))];
const inBoth = packages.filter((folder) => holds(ofQuick, folder));
const isShared = (id) => (ofPage.has(id) || ofQuick.has(id)) && inBoth.includes(packageFolderOf(id));

/** Where later scripts find what a module of an earlier one exports: in `self.swagwright_shared.m7`. */
const places = [...exportsOf.keys()];
const placeOf = (id) => `m${places.indexOf(id)}`;

/** What others take, by module. */
const taken = new Map();

/** A script that takes from earlier ones what they hold, and notes what that is. */
const laterBundle = async (entry, isEarlier, more = []) => {
  const fromEarlier = {
    name: 'from-earlier',
    load(id) {
      if (!isEarlier(id)) return undefined;
      const of = `self.swagwright_shared.${placeOf(id)}`;
      const line = (name) =>
        name === 'default' ? `export default ${of}.default;` : `export const ${name} = ${of}.${name};`;
      return exportsOf.get(id).map(line).join('\n');
    },
  };
  const built = await bundle(entry, [fromEarlier, ...more], { propertyReadSideEffects: false });
  for (const [id, { renderedExports }] of built.held)
    if (isEarlier(id)) taken.set(id, new Set([...(taken.get(id) ?? []), ...renderedExports]));
  return built;
};

/** Has a script show what others take of the modules that it holds, and no more. */
const showing = (entry, isShown) => ({
  name: 'showing',
  transform(code, id) {
    if (id !== source + entry) return undefined;
    const ids = [...taken.keys()].filter(isShown);
    const imports = ids.map((from) => `import * as ${placeOf(from)} from ${JSON.stringify(from)};`);
    const shown = ids.map((from) => {
      const m = placeOf(from);
      return `${m}:{${[...taken.get(from)].map((name) => `${name}:${m}.${name}`).join()}}`;
    });
    return `${imports.join('')}${code}\nself.swagwright_shared={...self.swagwright_shared,${shown.join()}};`;
  },
});

const isOfPage = (id) => ofPage.has(id) && !isShared(id);
const LATER = ['trace', 'glass', 'projector', 'class', 'fills', 'designs'];
const later = [];
for (const name of LATER)
  later.push([name, await laterBundle(`${name}-part.ts`, (id) => isOfPage(id) || isShared(id))]);
const page = await laterBundle('main.tsx', isShared, [showing('main.tsx', isOfPage)]);
const quick = await laterBundle('quick-worker.ts', isShared);
const thorough = await bundle('thorough-worker.ts');
const shared = await bundle('shared-part.ts', [showing('shared-part.ts', isShared)]);
const { script: service } = await bundle('service-worker.ts');

/** Fonts as text, because from a folder on disk a browser loads scripts and nothing else. */
const { resolve: found } = createRequire(import.meta.url);
const font = (file) => readFileSync(found(`dejavu-fonts-ttf/ttf/${file}`)).toString('base64');
const fonts = `self.swagwright_fonts={regular:"${font('DejaVuSans.ttf')}",bold:"${font('DejaVuSans-Bold.ttf')}"};`;
const asItStands = (name) => readFileSync(`${source}static/${name}`, 'utf8');

/**
 * What scripts and style sheets are called by, after their names: of another version of the page they are others, whoever
 * keeps them on the way, and a script of another version than the page that loads it does nothing.
 */
const hash = createHash('sha256');
for (const { script, style = '' } of [page, quick, thorough, shared, ...later.map(([, made]) => made)])
  hash.update(script).update(style);
for (const text of [service, fonts, ...readdirSync(`${source}static`).sort().map(asItStands)])
  hash.update(text);
const version = hash.digest('hex').slice(0, 16);
const styleOfThisVersion = (style) => `/*${version}*/${style}`;
const ofThisVersion = (script) => `if(self.swagwright_version==="${version}"){${script}\n}\n`;

for (const [name, { script, style }] of later) {
  write(`${name}.js`, ofThisVersion(script));
  write(`${name}.css`, styleOfThisVersion(style));
}
/**
 * Where the page's first scripts are of two versions, as when its host was visited while it was being filled, they are
 * asked for anew past what the browser has kept of them: the next load has them.
 */
const ASK_ANEW = 'else for(const {src} of document.scripts)if(src)fetch(src,{cache:"reload"}).catch(()=>{});';
write('page.js', `${ofThisVersion(page.script)}${ASK_ANEW}\n`);
write('page.css', styleOfThisVersion(page.style));
write('fonts.js', ofThisVersion(fonts));

/** A function, as each worker is, because the page can hand on its text. */
write(
  'shared.js',
  `self.swagwright_version="${version}";self.swagwright_start=function(){${shared.script}\n};self.swagwright_start();\n`,
);

/** A worker as a function: it runs where the file is a worker's own, and the page can hand its text to one. */
for (const [name, { script }, start] of [
  ['quick', quick, `importScripts("shared.js?${version}");`],
  ['thorough', thorough, ''],
])
  write(
    `${name}.js`,
    [
      '{const isWorker=typeof document==="undefined";',
      `if(isWorker?location.search==="?${version}":self.swagwright_version==="${version}"){`,
      `self.swagwright_${name}=function(){${script}\n};`,
      `if(isWorker){${start}self.swagwright_${name}()}`,
      '}else if(isWorker)throw new Error("of another version than its page")}\n',
    ].join(''),
  );

write(
  'index.html',
  asItStands('index.html').replace(/\b(?:page\.css|shared\.js|page\.js)(?=")/g, `$&?${version}`),
);
for (const name of ['icon.svg', 'manifest.webmanifest']) write(name, readFileSync(`${source}static/${name}`));

const called = (name) => (/\.(js|css)$/.test(name) ? `${name}?${version}` : name);
const own = { version, files: readdirSync(out).sort().map(called) };
write('service-worker.js', `self.swagwright_own=${JSON.stringify(own)};\n${service}`);

const read = (name) => (name === 'index.html' ? asItStands(name) : readFileSync(out + name, 'utf8'));
write(
  ONE_FILE,
  oneFile(read, ['page', ...LATER].map((name) => read(`${name}.css`)).join('\n'), {
    first: ['shared.js', 'page.js'],
    later: [...LATER, 'quick', 'thorough', 'fonts'].map((name) => `${name}.js`),
  }),
);

// For who puts the page on a host of their own; nothing of it is loaded.
write('THIRD-PARTY.txt', thirdParty(modules, ['dejavu-fonts-ttf']));
