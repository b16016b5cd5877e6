import { execFileSync, spawnSync } from 'node:child_process';
import { closeSync, existsSync, openSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
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
    expect(ran.stderr).toBe('standard output: the disk is full; nothing was written\n');
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
    expect(all.map((ran) => ran.code)).toEqual([0, 0, 0]);
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

  it('loads nothing for its help but the program’s own first files and commander', () => {
    const loaded = loadedBy([built.bin, '--help']);
    expect(loaded.some((url) => url.endsWith('/cli/bin.js'))).toBe(true);
    const packages = loaded.flatMap((url) => /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(url)?.[1] ?? []);
    expect([...new Set(packages)]).toEqual(['commander']);
    expect(
      loaded.filter((url) => !url.includes('node_modules')).every((url) => url.includes('/dist/cli/')),
    ).toBe(true);
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
