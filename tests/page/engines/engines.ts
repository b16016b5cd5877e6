/**
 * The three engines that browsers are made of, each in a browser of Debian's: how it is started in an empty place of its
 * own, with no way to the network, and how it tells what went wrong in it.
 */

import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { overHttp, overSocket, type Wire } from './wire.ts';

export interface Started {
  readonly wire: Wire;
  /** What it is and which version. */
  readonly named: string;
  /** Where what is downloaded lies. */
  readonly downloads: string;
  /** Errors that scripts threw and what the page's policy refused, so far. */
  readonly faults: () => Promise<readonly string[]>;
  readonly stop: () => Promise<void>;
}

export interface Engine {
  readonly name: string;
  /** Programs that it needs, and the packages of Debian's that they come in. */
  readonly needs: Readonly<Record<string, string>>;
  readonly start: (place: Place) => Promise<Started>;
}

interface Place {
  readonly folder: string;
  readonly downloads: string;
  /** Starts a program that ends with the place; the way to what it says. */
  readonly program: (path: string, args: readonly string[], env?: Readonly<Record<string, string>>) => Said;
}

interface Said {
  readonly child: ChildProcess;
  readonly text: () => string;
}

/** Nobody listens there: what asks for an address beyond this computer is refused. */
const NOWHERE = '127.0.0.1:9';

const PROXY = { proxyType: 'manual', httpProxy: NOWHERE, sslProxy: NOWHERE, noProxy: ['127.0.0.1'] };

const CHROMIUM: Engine = {
  name: 'Chromium',
  needs: { '/usr/bin/chromium': 'chromium', '/usr/bin/chromedriver': 'chromium-driver' },
  start: async ({ downloads, folder, program }) => {
    const port = await freePort();
    program('/usr/bin/chromedriver', [`--port=${port}`]);
    const wire = await answering(port);
    const named = await begin(wire, {
      proxy: PROXY,
      'goog:loggingPrefs': { browser: 'ALL' },
      'goog:chromeOptions': {
        binary: '/usr/bin/chromium',
        args: [
          '--headless',
          '--no-sandbox',
          '--disable-gpu',
          '--no-first-run',
          `--user-data-dir=${folder}/kept`,
        ],
        prefs: { 'download.default_directory': downloads },
      },
    });
    const faults: string[] = [];
    return {
      wire,
      named,
      downloads,
      faults: async () => {
        const lines = (await wire.own('/se/log', { type: 'browser' })) as {
          level: string;
          message: string;
        }[];
        faults.push(...lines.filter(({ level }) => level === 'SEVERE').map(({ message }) => message));
        return faults;
      },
      stop: async () => void (await wire.send('end')),
    };
  },
};

const FIREFOX: Engine = {
  name: 'Firefox',
  needs: { '/usr/bin/firefox-esr': 'firefox-esr' },
  start: async ({ downloads, folder, program }) => {
    const profile = join(folder, 'profile');
    mkdirSync(profile);
    const wishes = {
      'marionette.port': 0,
      'browser.download.folderList': 2,
      'browser.download.dir': downloads,
      'browser.download.alwaysOpenPanel': false,
      // A PDF is kept and not also shown in a tab of its own.
      'browser.download.open_pdf_attachments_inline': false,
      'pdfjs.disabled': true,
      'browser.helperApps.neverAsk.saveToDisk': 'application/pdf,text/html,application/yaml',
      'browser.shell.checkDefaultBrowser': false,
      'datareporting.policy.dataSubmissionEnabled': false,
    };
    writeFileSync(
      join(profile, 'user.js'),
      Object.entries(wishes)
        .map(([key, value]) => `user_pref(${JSON.stringify(key)}, ${JSON.stringify(value)});\n`)
        .join(''),
    );
    program('/usr/bin/firefox-esr', [
      '--headless',
      '--marionette',
      '--remote-allow-system-access',
      '--no-remote',
      '--profile',
      profile,
    ]);
    const told = join(profile, 'MarionetteActivePort');
    await until(() => existsSync(told) && readFileSync(told, 'utf8') !== '', 'Firefox listens');
    const wire = await overSocket(Number(readFileSync(told, 'utf8')));
    const named = await begin(wire, { proxy: PROXY });
    return {
      wire,
      named,
      downloads,
      faults: async () => {
        await wire.own('Marionette:SetContext', { value: 'chrome' });
        const lines = await wire.send('run', { script: OF_FIREFOX, args: [] });
        await wire.own('Marionette:SetContext', { value: 'content' });
        return lines as string[];
      },
      stop: async () => void (await wire.own('Marionette:Quit', { flags: ['eForceQuit'] })),
    };
  },
};

/** The errors in its list of messages that come from pages and not from the browser's own files. */
const OF_FIREFOX = `return Services.console.getMessageArray()
  .filter((one) => one instanceof Ci.nsIScriptError && !(one.flags & Ci.nsIScriptError.warningFlag))
  .filter((one) => /^(file|blob|data|http):/.test(one.sourceName))
  .map((one) => one.errorMessage)`;

const WEBKIT_BROWSER = '/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser';

const WEBKIT: Engine = {
  name: 'WebKit',
  needs: { '/usr/bin/WebKitWebDriver': 'webkit2gtk-driver', '/usr/bin/Xvfb': 'xvfb' },
  start: async ({ downloads, folder, program }) => {
    const screen = program('/usr/bin/Xvfb', [
      '-displayfd',
      '1',
      '-screen',
      '0',
      '1600x1400x24',
      '-nolisten',
      'tcp',
    ]);
    // Its number stands on a line by itself, among what else it says.
    const shownAt = () => /^\d+$/m.exec(screen.text())?.[0];
    await until(() => shownAt() !== undefined, 'a screen for WebKit');
    writeFileSync(join(folder, 'user-dirs.dirs'), `XDG_DOWNLOAD_DIR="${downloads}"\n`);
    const port = await freePort();
    const driver = program('/usr/bin/WebKitWebDriver', [`--port=${port}`], {
      DISPLAY: `:${shownAt()}`,
      HOME: folder,
      XDG_CONFIG_HOME: folder,
      XDG_DATA_HOME: join(folder, 'data'),
      XDG_CACHE_HOME: join(folder, 'cache'),
    });
    const wire = await answering(port);
    const named = await begin(wire, {
      proxy: PROXY,
      'webkitgtk:browserOptions': {
        binary: WEBKIT_BROWSER,
        args: ['--automation', '--enable-write-console-messages-to-stdout=true'],
      },
    });
    return {
      wire,
      named,
      downloads,
      faults: async () =>
        driver
          .text()
          .split('\n')
          .filter((line) => /CONSOLE .*ERROR/.test(line)),
      stop: async () => void (await wire.send('end')),
    };
  },
};

export const ENGINES: readonly Engine[] = [CHROMIUM, FIREFOX, WEBKIT];

/** Packages that are not there, of those that it needs. */
export const missing = ({ needs }: Engine): readonly string[] =>
  Object.entries(needs).flatMap(([program, from]) => (existsSync(program) ? [] : from));

export const start = async (engine: Engine): Promise<Started> => {
  const folder = mkdtempSync(join(tmpdir(), 'swagwright-engine-'));
  const downloads = join(folder, 'downloads');
  mkdirSync(downloads);
  const children: ChildProcess[] = [];
  const program: Place['program'] = (path, args, env = {}) => {
    const child = spawn(path, args, { env: { ...process.env, ...env }, stdio: ['ignore', 'pipe', 'pipe'] });
    children.push(child);
    const parts: string[] = [];
    for (const stream of [child.stdout, child.stderr])
      stream.setEncoding('utf8').on('data', (part: string) => parts.push(part));
    return { child, text: () => parts.join('') };
  };
  const end = async () => {
    const gone = children.filter((child) => child.exitCode === null && child.signalCode === null);
    const over = gone.map((child) => new Promise((done) => child.once('exit', done)));
    for (const child of gone.toReversed()) child.kill();
    await Promise.all(over);
    // What they started themselves writes for a moment longer.
    await until(() => isRemoved(folder), `${folder} is removed`);
  };
  try {
    const started = await engine.start({ folder, downloads, program });
    return {
      ...started,
      stop: async () => {
        await started.stop().catch(() => {});
        started.wire.close();
        await end();
      },
    };
  } catch (error) {
    await end();
    throw error;
  }
};

const isRemoved = (folder: string): boolean => {
  try {
    rmSync(folder, { recursive: true, force: true });
    return true;
  } catch {
    return false;
  }
};

const begin = async (wire: Wire, wanted: object): Promise<string> => {
  const begun = await wire.send('begin', { capabilities: { alwaysMatch: wanted } });
  const { capabilities } = begun as { capabilities: { browserName: string; browserVersion: string } };
  return `${capabilities.browserName} ${capabilities.browserVersion}`;
};

const answering = async (port: number): Promise<Wire> => {
  await until(
    () =>
      fetch(`http://127.0.0.1:${port}/status`).then(
        () => true,
        () => false,
      ),
    'the driver answers',
  );
  return overHttp(port);
};

export const until = async (
  so: () => boolean | Promise<boolean>,
  what: string,
  most = 60_000,
): Promise<void> => {
  for (const began = performance.now(); !(await so()); ) {
    if (performance.now() - began > most) throw new Error(`not within ${most / 1000} s: ${what}`);
    await new Promise((soon) => setTimeout(soon, 100));
  }
};

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer().once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });
