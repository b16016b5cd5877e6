/** Questions to a worker: the newest of a kind, one at a time, and none that hangs. */

import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type Hand, startClient } from '../../src/page/engine/client.ts';
import type { Asked, Question } from '../../src/page/engine/messages.ts';

const INPUT = { plan: '', own: [], taken: undefined };
const look = (plan: string): Question & { kind: 'look' } => ({ kind: 'look', input: { ...INPUT, plan } });
const words: Question & { kind: 'words' } = { kind: 'words', input: INPUT };

interface Worker extends Hand {
  readonly asked: Asked[];
  ended: boolean;
}

const workshop = () => {
  const workers: Worker[] = [];
  const hire = async (): Promise<Hand> => {
    const worker: Worker = {
      asked: [],
      ended: false,
      onmessage: null,
      onerror: null,
      postMessage: (message) => void worker.asked.push(message),
      terminate: () => {
        worker.ended = true;
      },
    };
    workers.push(worker);
    return worker;
  };
  const reply = (worker: Worker, answer: unknown): void =>
    worker.onmessage?.({ data: { id: worker.asked.at(-1)!.id, ok: true, answer } });
  return { workers, hire, reply };
};

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});
const tick = (): Promise<unknown> => vi.advanceTimersByTimeAsync(0);

describe('a client', () => {
  test('asks one question at a time, in order', async () => {
    const { workers, hire, reply } = workshop();
    const client = startClient(hire);
    const first = client.ask(look('a'));
    const second = client.ask(words);
    await tick();
    expect(workers[0]!.asked.map((a) => a.question.kind)).toEqual(['look']);
    reply(workers[0]!, 1);
    expect(await first).toEqual({ kind: 'answer', answer: 1 });
    await tick();
    expect(workers[0]!.asked.map((a) => a.question.kind)).toEqual(['look', 'words']);
    reply(workers[0]!, 2);
    expect(await second).toEqual({ kind: 'answer', answer: 2 });
    expect(workers.length).toBe(1);
  });

  test('of what waits, only the newest of a kind is asked', async () => {
    const { workers, hire, reply } = workshop();
    const client = startClient(hire);
    void client.ask(look('a'));
    const b = client.ask(look('b'));
    const c = client.ask(look('c'));
    expect(await b).toEqual({ kind: 'stopped' });
    await tick();
    reply(workers[0]!, 'a');
    await tick();
    expect((workers[0]!.asked[1]!.question as { input: { plan: string } }).input.plan).toBe('c');
    reply(workers[0]!, 'c');
    expect(await c).toEqual({ kind: 'answer', answer: 'c' });
  });

  test('what has run long gives way to a newer one of its kind, in a fresh worker', async () => {
    const { workers, hire, reply } = workshop();
    const client = startClient(hire);
    const slow = client.ask(look('slow'));
    await vi.advanceTimersByTimeAsync(1000);
    const next = client.ask(look('next'));
    expect(await slow).toEqual({ kind: 'stopped' });
    await tick();
    expect(workers.map((w) => w.ended)).toEqual([true, false]);
    reply(workers[1]!, 1);
    expect(await next).toEqual({ kind: 'answer', answer: 1 });
  });

  test('a late answer of an earlier question is nobody’s', async () => {
    const { workers, hire } = workshop();
    const client = startClient(hire);
    const asked = client.ask(look('a'));
    await tick();
    const [worker] = workers;
    worker!.onmessage?.({ data: { id: 99, ok: true, answer: 'other' } });
    worker!.onmessage?.({ data: { id: 1, ok: true, answer: 'own' } });
    expect(await asked).toEqual({ kind: 'answer', answer: 'own' });
  });

  test('what an ended worker could not load is nobody’s trouble', async () => {
    const { workers, hire, reply } = workshop();
    const client = startClient(hire);
    void client.ask(look('slow'));
    await vi.advanceTimersByTimeAsync(1000);
    const next = client.ask(look('next'));
    await tick();
    // Chromium ends a worker's loading with an error, which it still tells.
    workers[0]!.onerror?.({});
    reply(workers[1]!, 1);
    expect(await next).toEqual({ kind: 'answer', answer: 1 });
    expect(workers.map((w) => w.ended)).toEqual([true, false]);
  });

  test('a question that takes too long is stopped and told, and the next is answered', async () => {
    const { workers, hire, reply } = workshop();
    const client = startClient(hire, 5000);
    const endless = client.ask(look('endless'));
    await vi.advanceTimersByTimeAsync(5000);
    expect(await endless).toMatchObject({
      kind: 'problems',
      problems: [{ text: 'This took too long and was stopped.' }],
    });
    const next = client.ask(words);
    await tick();
    expect(workers[0]!.ended).toBe(true);
    reply(workers[1]!, 1);
    expect(await next).toEqual({ kind: 'answer', answer: 1 });
  });

  test('stop calls off what runs and what waits', async () => {
    const { workers, hire } = workshop();
    const client = startClient(hire);
    const asked = [client.ask(look('a')), client.ask(words)];
    await tick();
    client.stop();
    expect(await Promise.all(asked)).toEqual([{ kind: 'stopped' }, { kind: 'stopped' }]);
    await tick();
    expect(workers[0]!.ended).toBe(true);
  });

  test('a worker that cannot start is told, and tried again', async () => {
    const { workers, hire, reply } = workshop();
    let fails = true;
    const client = startClient(async () => {
      if (fails) throw new Error('no');
      return hire();
    });
    expect(await client.ask(look('a'))).toMatchObject({ kind: 'problems' });
    fails = false;
    const again = client.ask(look('b'));
    await tick();
    reply(workers[0]!, 1);
    expect(await again).toEqual({ kind: 'answer', answer: 1 });
  });
});
