import { execFileSync, spawnSync } from 'node:child_process';
import { closeSync, existsSync, openSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Built, build, exited, spawned, start } from './build.ts';
import { emptyFolder } from './run.ts';

let built: Built;
beforeAll(() => {
  built = build();
});
afterAll(() => built.remove());

describe('the program as a process', () => {
  it('prints its help on stdout, and nothing else anywhere', async () => {
    const folder = emptyFolder();
    const ran = await spawned(built.bin, folder, ['--help']);
    expect(ran).toMatchObject({ code: 0, err: '' });
    expect(ran.out).toMatch(/^Usage: swagwright /);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('exits with 2 and one line on wrong use, and with 1 and one line on wrong input', async () => {
    const folder = emptyFolder();
    expect(await spawned(built.bin, folder, ['mokcup'])).toEqual({
      code: 2,
      signal: null,
      out: '',
      err: `unknown command 'mokcup'; did you mean "mockup"?\n`,
    });
    expect(await spawned(built.bin, folder, ['mockup', 'none.yaml'])).toEqual({
      code: 1,
      signal: null,
      out: '',
      err: 'none.yaml: there is no such file\n',
    });
    expect(readdirSync(folder)).toEqual([]);
  });

  it('is quiet when the reader of its output goes away', async () => {
    const child = start(built.bin, emptyFolder(), ['--help']);
    child.stdout.destroy();
    const ran = await exited(child);
    expect(ran).toMatchObject({ code: 0, err: '' });
  });

  it.runIf(existsSync('/dev/full'))('says so when its output cannot be written', () => {
    const full = openSync('/dev/full', 'w');
    const ran = spawnSync(process.execPath, [built.bin, '--help'], {
      cwd: emptyFolder(),
      stdio: ['ignore', full, 'pipe'],
      encoding: 'utf8',
    });
    closeSync(full);
    expect(ran.status).toBe(1);
    expect(ran.stderr).toBe('standard output: the disk is full; what has come out there is not whole\n');
  });

  it.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
    'removes the half-written file when it dies of %s, and dies of it',
    async (signal) => {
      const folder = emptyFolder();
      const half = join(folder, '.half.tmp');
      writeFileSync(half, 'half');
      // The program's own watch over a half-written file, in a process that stays until it is ended.
      const script = join(folder, 'wait.mjs');
      const io = pathToFileURL(join(dirname(built.bin), 'node-io.js')).href;
      writeFileSync(
        script,
        `import { nodeIo } from ${JSON.stringify(io)};
         nodeIo().removeWhenInterrupted(${JSON.stringify(half)});
         setInterval(() => {}, 1000);
         process.stdout.write('ready');`,
      );
      const child = start(script, folder, []);
      child.stdout.once('data', () => child.kill(signal));
      expect(await exited(child)).toMatchObject({ signal, err: '' });
      expect(existsSync(half)).toBe(false);
    },
  );

  it('writes whole files when several run at once into one', async () => {
    const folder = emptyFolder();
    writeFileSync(
      join(folder, 'plan.yaml'),
      'template: baluster\nlayout:\n  strip: { length: 36, width: 5, margin: 1/4 }\n',
    );
    const argv = ['draw', 'plan.yaml', '-o', 'one.svg'];
    const all = await Promise.all([1, 2, 3].map(() => spawned(built.bin, folder, argv)));
    expect(all.filter((ran) => ran.code !== 0).map((ran) => ran.err)).toEqual([]);
    expect(readFileSync(join(folder, 'one.svg'), 'utf8')).toMatch(/^<\?xml[\s\S]*<\/svg>\n$/);
    expect(readdirSync(folder).sort()).toEqual(['one.svg', 'plan.yaml']);
  });

  /** Every file that a run loads, as node itself tells it. */
  const loadedBy = (argv: readonly string[]): readonly string[] => {
    const folder = emptyFolder();
    const env = { ...process.env, NODE_V8_COVERAGE: folder };
    execFileSync(process.execPath, argv, { stdio: 'ignore', env });
    const [report] = readdirSync(folder);
    const { result } = JSON.parse(readFileSync(join(folder, report!), 'utf8')) as {
      result: readonly { url: string }[];
    };
    return result.map((script) => script.url).filter((url) => url.startsWith('file:'));
  };

  /** What the built files hold, as the bundler notes it above each module: source files, and packages' files. */
  const heldBy = (texts: readonly string[]): readonly string[] =>
    texts.flatMap((text) => [...text.matchAll(/^\/\/ ((?:src|node_modules)\/\S+)$/gm)].map((m) => m[1]!));

  const packagesOf = (held: readonly string[]): readonly string[] => [
    ...new Set(held.flatMap((file) => /^node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(file)?.[1] ?? [])),
  ];

  it.each([
    '',
    ...['fit', 'mockup', 'draw', 'card', 'audition', 'open', 'template', 'template import', 'template trace'],
  ])('loads nothing for “%s --help” but the program’s own first files and commander', (command) => {
    const loaded = loadedBy([built.bin, ...command.split(' ').filter(Boolean), '--help']);
    expect(loaded.some((url) => url.endsWith('/cli/bin.js'))).toBe(true);
    const held = heldBy(loaded.map((url) => readFileSync(fileURLToPath(url), 'utf8')));
    expect(packagesOf(held)).toEqual(['commander']);
    expect(loaded.filter((url) => url.includes('node_modules'))).toEqual([]);
    const own = held.filter((file) => file.startsWith('src/'));
    expect(own).toContain('src/cli/main.ts');
    // `draw` says which kinds of picture there are: the table of writers, and none of them.
    const table = command === 'draw' ? ['src/output/writers/index.ts'] : [];
    expect(own.filter((file) => !file.startsWith('src/cli/'))).toEqual(table);
  });

  it('needs no other package but the canvas, and says whose work it holds', () => {
    const dist = join(dirname(built.bin), '..');
    const files = [
      ...readdirSync(join(dist, 'parts')).map((name) => `parts/${name}`),
      'cli/bin.js',
      'index.js',
    ];
    const texts = files.map((name) => readFileSync(join(dist, name), 'utf8'));
    const asked = texts.flatMap((text) =>
      [...text.matchAll(/^(?:import|export)\b[^;]*?\bfrom "([^".][^"]*)";|\bimport\("([^".][^"]*)"\)/gm)].map(
        (m) => m[1] ?? m[2]!,
      ),
    );
    expect([...new Set(asked.filter((name) => !name.startsWith('node:')))]).toEqual(['@napi-rs/canvas']);
    const own = readFileSync(join(import.meta.dirname, '../../package.json'), 'utf8');
    expect(Object.keys((JSON.parse(own) as { dependencies: object }).dependencies)).toEqual([
      '@napi-rs/canvas',
    ]);
    const notices = readFileSync(join(dist, 'THIRD-PARTY.txt'), 'utf8');
    const packages = packagesOf(heldBy(texts));
    expect(packages.length).toBeGreaterThan(10);
    for (const name of [...packages, 'dejavu-fonts-ttf']) expect(notices).toContain(`\n${name} `);
  });

  it('brings its help in less than 1.6 times what node alone needs', () => {
    // The least of many runs in turn, by what each took of the processor: other work on the machine, such as tests
    // beside this one, makes a run wait but not work.
    const least = { bare: Number.POSITIVE_INFINITY, help: Number.POSITIVE_INFINITY };
    const tell = `data:text/javascript,process.on('exit', () => {
      const { userCPUTime, systemCPUTime } = process.resourceUsage();
      process.stderr.write('took ' + (userCPUTime + systemCPUTime));
    })`;
    const time = (argv: readonly string[]): number => {
      const ran = spawnSync(process.execPath, ['--import', tell, ...argv], { encoding: 'utf8' });
      return Number(/took (\d+)$/.exec(ran.stderr)?.[1]);
    };
    for (let i = 0; i < 25; i++) {
      least.bare = Math.min(least.bare, time(['-e', '0']));
      least.help = Math.min(least.help, time([built.bin, '--help']));
    }
    expect(least.help / least.bare).toBeLessThan(1.6);
  });
});
