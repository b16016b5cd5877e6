/**
 * The way to a browser's driver: WebDriver's commands (https://www.w3.org/TR/webdriver2/), over HTTP as the standard
 * says, or to Firefox over the socket on which its own driver sends the same commands by name.
 */

import { connect, type Socket } from 'node:net';

type Given = Readonly<Record<string, unknown>> & { readonly id?: string };

/** What each command is called on both ways. A part of a path in braces is filled from what is given. */
const COMMANDS = {
  begin: ['POST', '', 'WebDriver:NewSession'],
  end: ['DELETE', '/{session}', 'WebDriver:DeleteSession'],
  go: ['POST', '/{session}/url', 'WebDriver:Navigate'],
  reload: ['POST', '/{session}/refresh', 'WebDriver:Refresh'],
  run: ['POST', '/{session}/execute/sync', 'WebDriver:ExecuteScript'],
  click: ['POST', '/{session}/element/{id}/click', 'WebDriver:ElementClick'],
  type: ['POST', '/{session}/element/{id}/value', 'WebDriver:ElementSendKeys'],
  act: ['POST', '/{session}/actions', 'WebDriver:PerformActions'],
  size: ['POST', '/{session}/window/rect', 'WebDriver:SetWindowRect'],
  picture: ['GET', '/{session}/screenshot', 'WebDriver:TakeScreenshot'],
  timeouts: ['POST', '/{session}/timeouts', 'WebDriver:SetTimeouts'],
} as const;

type Command = keyof typeof COMMANDS;

export interface Wire {
  readonly send: (command: Command, given?: Given) => Promise<unknown>;
  /** A command that only this driver has: its path after the session, or its name. */
  readonly own: (name: string, given: Given) => Promise<unknown>;
  readonly close: () => void;
}

export const overHttp = (port: number): Wire => {
  let session = '';
  const ask = async (method: string, path: string, given: Given): Promise<unknown> => {
    const response = await fetch(`http://127.0.0.1:${port}/session${path}`, {
      method,
      ...(method === 'POST' ? { body: JSON.stringify(given) } : {}),
    });
    const { value } = (await response.json()) as { value: { error?: string; message?: string } | null };
    if (!response.ok) throw new Error(`${path}: ${value?.error}: ${value?.message}`);
    return value;
  };
  return {
    send: async (command, given = {}) => {
      const [method, path] = COMMANDS[command];
      const filled = path.replace('{session}', session).replace('{id}', given.id ?? '');
      const value = await ask(method, filled, given);
      if (command === 'begin') session = (value as { sessionId: string }).sessionId;
      return value;
    },
    own: (path, given) => ask('POST', `/${session}${path}`, given),
    close: () => {},
  };
};

/** Messages are `LENGTH:JSON`; an answer is `[1, number, error, value]`. */
export const overSocket = async (port: number): Promise<Wire> => {
  const socket = await new Promise<Socket>((resolve, reject) => {
    const opened = connect(port, '127.0.0.1', () => resolve(opened));
    opened.once('error', reject);
  });
  const waiting = new Map<number, (answer: readonly unknown[]) => void>();
  socket.on('close', () => {
    for (const [number, answer] of waiting) answer([1, number, { message: 'the browser has gone' }]);
  });
  let came = Buffer.alloc(0);
  socket.on('data', (chunk) => {
    came = Buffer.concat([came, chunk]);
    for (;;) {
      const colon = came.indexOf(':');
      const end = colon + 1 + Number(came.subarray(0, colon));
      if (colon < 0 || came.length < end) return;
      const answer = JSON.parse(came.subarray(colon + 1, end).toString()) as readonly unknown[];
      came = came.subarray(end);
      // The greeting is no answer.
      if (Array.isArray(answer)) waiting.get(answer[1])?.(answer);
    }
  });
  let last = 0;
  const ask = async (name: string, given: Given): Promise<unknown> => {
    const number = ++last;
    const [, , error, value] = await new Promise<readonly unknown[]>((resolve) => {
      waiting.set(number, resolve);
      const text = JSON.stringify([0, number, name, given]);
      socket.write(`${Buffer.byteLength(text)}:${text}`);
    });
    waiting.delete(number);
    if (error) throw new Error(`${name}: ${(error as { message: string }).message}`);
    const kept = value as { value?: unknown } | null;
    return kept !== null && 'value' in kept ? kept.value : kept;
  };
  return {
    send: (command, given = {}) => ask(COMMANDS[command][2], given),
    own: ask,
    close: () => socket.destroy(),
  };
};
