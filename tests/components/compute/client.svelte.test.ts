/** The page's side of the protocol, against a worker that a test plays. */
import { flushSync } from 'svelte';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Client, UNFETCHED } from '../../../components/compute/client.svelte.ts';
import { Connection, type Port } from '../../../components/compute/connection.ts';
import type { FromWorker, ToWorker } from '../../../components/compute/protocol.ts';
import { resolveProject } from '../../../src/core/index.ts';
import { project as read } from '../../core/project/files.ts';

class FakeWorker implements Port {
  readonly sent: ToWorker[] = [];
  isOver = false;
  onmessage: Port['onmessage'] = null;
  onerror: Port['onerror'] = null;
  postMessage(message: ToWorker): void {
    this.sent.push(structuredClone(message));
  }
  terminate(): void {
    this.isOver = true;
  }
  say(news: FromWorker): void {
    this.onmessage?.({ data: news } as MessageEvent<FromWorker>);
  }
  get asked() {
    return this.sent.flatMap((message) => (message.kind === 'ask' ? [message] : []));
  }
}

const file = read(`
title: Cloth
measures:
  card width: { in: 4, mm: 105, between: { in: [3, 6], mm: [75, 155] }, step: { in: 1, mm: 1 } }
pieces:
  cloth: { from: outer, size: [card width, card width] }
`);
const project = { id: 'cloth', file, materials: {}, edition: 'metric' as const };
const patternFor = (width: number) =>
  resolveProject(project.file, { edition: 'metric', values: { 'card width': width } });
const [lesson, wide] = [patternFor(105), patternFor(110)];

let workers: FakeWorker[];
let connection: Connection;
let ends: (() => void)[];

beforeEach(() => {
  workers = [];
  ends = [];
  connection = new Connection(() => {
    workers.push(new FakeWorker());
    return workers.at(-1)!;
  });
});
afterEach(() => ends.forEach((end) => end()));

/** A client in a component of its own, and the way to end that. */
function client(rest = 0): { client: Client<'places'>; end: () => void } {
  let made!: Client<'places'>;
  const end = $effect.root(() => {
    made = new Client<'places'>({ rest, connection });
  });
  flushSync();
  ends.push(end);
  return { client: made, end };
}

const places = (step: string) => ({ kind: 'places', step }) as const;
const answer = (by: number, n: number, share: number, isLast = true): FromWorker => ({
  ...{ by, n, kind: 'answer', isLast },
  value: [{ n: 1, at: { x: 0, y: 0 }, stack: [], share, sewn: false }],
});

describe('a client', () => {
  it('starts one worker for the whole page, when it asks, and sends a project once', () => {
    const [one, other] = [client().client, client().client];
    expect(workers).toHaveLength(0);
    one.ask(places('hem'), { project, pattern: lesson });
    other.ask(places('fold'), { project, pattern: wide });
    expect(workers).toHaveLength(1);
    const { sent, asked } = workers[0]!;
    expect(sent.map(({ kind }) => kind)).toEqual(['project', 'ask', 'ask']);
    expect(asked.map(({ size }) => size.values['card width'])).toEqual([105, 110]);
    expect(asked[0]!.by).not.toBe(asked[1]!.by);
  });

  it('is stale until what was asked last is answered, and tells how far it is', () => {
    const { client: one } = client();
    expect(one).toMatchObject({ value: undefined, stale: true, progress: undefined, error: '' });
    one.ask(places('hem'), { project, pattern: lesson });
    expect(one.progress).toBe(0);
    const [worker] = workers;
    worker!.say({ by: 1, n: 1, kind: 'progress', share: 0.5 });
    expect(one).toMatchObject({ stale: true, progress: 0.5 });
    worker!.say(answer(1, 1, 0.3, false));
    expect(one).toMatchObject({ stale: false, progress: 0.5 });
    worker!.say(answer(1, 1, 0.4));
    expect(one).toMatchObject({ stale: false, progress: undefined, of: lesson });
    expect(one.value![0]!.share).toBe(0.4);
  });

  it('shows a late answer as stale, and no answer that is older than what it shows', () => {
    const { client: one } = client();
    one.ask(places('hem'), { project, pattern: lesson });
    one.ask(places('hem'), { project, pattern: wide });
    workers[0]!.say(answer(1, 1, 0.1));
    expect(one).toMatchObject({ stale: true, of: lesson });
    workers[0]!.say(answer(1, 2, 0.2));
    expect(one).toMatchObject({ stale: false, of: wide });
    workers[0]!.say(answer(1, 1, 0.1));
    expect(one.value![0]!.share).toBe(0.2);
  });

  it('lets the hand rest first where it is told to, and then sends the newest request alone', () => {
    vi.useFakeTimers();
    const { client: one } = client(120);
    for (const step of ['first', 'second', 'third']) {
      one.ask(places(step), { project, pattern: lesson });
      vi.advanceTimersByTime(100);
    }
    expect(workers).toHaveLength(0);
    vi.advanceTimersByTime(20);
    expect(workers[0]!.asked.map(({ request }) => request)).toEqual([places('third')]);
    vi.useRealTimers();
  });

  it('hears nothing more of what it gave up, and keeps what it has', () => {
    const { client: one } = client();
    one.ask(places('hem'), { project, pattern: lesson });
    workers[0]!.say(answer(1, 1, 0.1, false));
    one.stop();
    expect(workers[0]!.sent.at(-1)).toEqual({ kind: 'stop', by: 1 });
    expect(one.progress).toBeUndefined();
    workers[0]!.say(answer(1, 1, 0.9));
    expect(one.value![0]!.share).toBe(0.1);
  });

  it('ends with its component', () => {
    const { client: one, end } = client();
    one.ask(places('hem'), { project, pattern: lesson });
    end();
    expect(workers[0]!.sent.at(-1)).toEqual({ kind: 'stop', by: 1 });
    workers[0]!.say(answer(1, 1, 0.1));
    expect(one.value).toBeUndefined();
  });

  it('passes on a sentence for the learner, and forgets it when it asks again', () => {
    const { client: one } = client();
    one.ask(places('hem'), { project, pattern: lesson });
    workers[0]!.say({ by: 1, n: 1, kind: 'error', message: 'Your project leaves this out.' });
    expect(one).toMatchObject({ stale: true, progress: undefined, error: 'Your project leaves this out.' });
    one.ask(places('hem'), { project, pattern: wide });
    expect(one.error).toBe('');
  });

  it.each([
    ['the worker', (worker: FakeWorker) => worker.onerror?.(undefined as unknown as ErrorEvent)],
    ['a part of it', (worker: FakeWorker) => worker.say({ by: 1, n: 1, kind: 'unfetched' })],
  ])('says kindly that %s could not be fetched, and tries anew when it is asked again', (_, lose) => {
    const [one, idle] = [client().client, client().client];
    one.ask(places('hem'), { project, pattern: lesson });
    lose(workers[0]!);
    expect(one.error).toBe(UNFETCHED);
    expect(idle.error).toBe('');
    expect(workers[0]!.isOver).toBe(true);
    one.ask(places('hem'), { project, pattern: lesson });
    expect(workers).toHaveLength(2);
    expect(workers[1]!.sent.map(({ kind }) => kind)).toEqual(['project', 'ask']);
  });
});
