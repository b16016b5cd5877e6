/** What a person does at a page, in whichever engine: the same hands and eyes for all of them. */

import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { type Started, until } from './engines.ts';

/** How WebDriver hands over an element (https://www.w3.org/TR/webdriver2/#elements). */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';

type Found = { readonly [ELEMENT]: string };

/** Of all that can be pressed or filled in, the first that has this name and is there to be used. */
const BY_NAME = `const [name] = arguments;
  const called = (one) => [one.getAttribute('aria-label'), one.textContent, ...[...(one.labels ?? [])].map((l) => l.textContent)];
  return [...document.querySelectorAll('button, a, input, select, [role=slider]')]
    .find((one) => called(one).some((text) => (text ?? '').trim() === name) && one.getClientRects().length > 0) ?? null`;

/** Brings it into sight, and says where in the window it lies (pixels). */
const MIDDLE_OF = `const [one] = arguments;
  one.scrollIntoView({ block: 'center' });
  const { left, right, top, bottom } = one.getBoundingClientRect();
  return [Math.round((left + right) / 2), Math.round((top + bottom) / 2)]`;

const CONTROL_A = '\uE009a';

/** Everything has been answered that the page asked itself. */
const SETTLED = `return document.querySelector('.fit') !== null && document.querySelector('svg.board') !== null
  && document.querySelector('.working') === null`;

export const personAt = ({ wire, downloads }: Started) => {
  const look = <T>(script: string, ...args: unknown[]): Promise<T> =>
    wire.send('run', { script, args }) as Promise<T>;

  const named = async (name: string): Promise<string> => {
    let found: Found | null = null;
    await until(async () => {
      found = await look(BY_NAME, name);
      return found !== null;
    }, `something called “${name}”`);
    return found![ELEMENT];
  };

  const settled = async (): Promise<void> => {
    // What follows an answer is asked a moment later.
    for (let quiet = 0; quiet < 4; await new Promise((soon) => setTimeout(soon, 100))) {
      await until(() => look(SETTLED), 'an answer to everything that was asked', 180_000);
      quiet = (await look(SETTLED)) ? quiet + 1 : 0;
    }
  };

  const press = async (name: string): Promise<void> =>
    void (await wire.send('click', { id: await named(name) }));

  return {
    look,
    settled,
    press,
    go: async (url: string): Promise<void> => void (await wire.send('go', { url })),
    reload: async (): Promise<void> => void (await wire.send('reload')),
    /** In place of what stands there. */
    fill: async (name: string, text: string): Promise<void> => {
      // A command's keys are let go at its end.
      for (const given of [CONTROL_A, text])
        await wire.send('type', { id: await named(name), text: given, value: [...given] });
    },
    value: async (name: string): Promise<string> =>
      look('return arguments[0].value', { [ELEMENT]: await named(name) }),
    /** Gives a file to the page. */
    give: async (path: string): Promise<void> => {
      const input = await look<Found>('return document.querySelector("input[type=file]")');
      await wire.send('type', { id: input[ELEMENT], text: path, value: [...path] });
    },
    told: (words: RegExp): Promise<void> =>
      until(
        async () => words.test(await look('return document.querySelector(".notice")?.textContent ?? ""')),
        `the page says ${words}`,
      ),
    /** Takes hold of it and pulls it so many pixels to the right and down. */
    drag: async (name: string, right: number, down: number): Promise<void> => {
      // By its place in the window: WebKit takes no part of a drawing for a place to begin.
      const [x, y] = await look<number[]>(MIDDLE_OF, { [ELEMENT]: await named(name) });
      const moves = [0.25, 0.5, 0.75, 1].map((part) => ({
        type: 'pointerMove',
        duration: 50,
        origin: 'pointer',
        x: Math.round(right * part) - Math.round(right * (part - 0.25)),
        y: Math.round(down * part) - Math.round(down * (part - 0.25)),
      }));
      const actions = [
        { type: 'pointerMove', duration: 0, origin: 'viewport', x, y },
        { type: 'pointerDown', button: 0 },
        ...moves,
        { type: 'pointerUp', button: 0 },
      ];
      await wire.send('act', {
        actions: [{ type: 'pointer', id: 'mouse', parameters: { pointerType: 'mouse' }, actions }],
      });
    },
    /** What comes down when this is pressed: its name, where it lies, and its bytes. */
    download: async (name: string) => {
      const before = new Set(readdirSync(downloads));
      await press(name);
      let came: string | undefined;
      let size = -1;
      await until(
        () => {
          came = readdirSync(downloads).find(
            (file) => !before.has(file) && !/\.(part|crdownload|wkdownload)$/.test(file),
          );
          const last = size;
          size = came === undefined ? -1 : statSync(join(downloads, came)).size;
          return size > 0 && size === last;
        },
        `a file from “${name}”`,
        180_000,
      );
      const path = join(downloads, came!);
      return { file: came!, path, bytes: new Uint8Array(readFileSync(path)) };
    },
    /** A picture of the window (PNG). */
    picture: async (): Promise<Buffer> =>
      Buffer.from((await wire.send('picture', { full: false })) as string, 'base64'),
    /** Makes the window so that the page has this size in CSS pixels, as near as the browser allows. */
    size: async (width: number, height: number): Promise<void> => {
      for (let i = 0; i < 2; i++) {
        const [outerW, outerH, w, h] = await look<number[]>(
          'return [outerWidth, outerHeight, innerWidth, innerHeight]',
        );
        await wire.send('size', { width: width + outerW! - w!, height: height + outerH! - h! });
      }
    },
  };
};
