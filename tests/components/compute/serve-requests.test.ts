/** The worker's side of the protocol: what waits, what is replaced, what goes on beside something else. */
import { expect, it, vi } from 'vitest';
import {
  serveRequests,
  RequestError,
  type Handler,
  type Handlers,
} from '../../../components/compute/serve-requests.ts';
import type { FromWorker, Request, ToWorker } from '../../../components/compute/protocol.ts';
import type { Pattern } from '../../../src/core/index.ts';
import { folio, shelf } from '../../core/project/files.ts';

/** On a busy machine a pattern takes its time. */
const PATIENT = { timeout: 20_000 };

/** A worker that knows the folio, and in which some kinds of request are worked out as a test wants it. */
function started(own: Partial<Handlers>) {
  const news: FromWorker[] = [];
  const nothing = () => Promise.reject(new Error('not asked for here'));
  const kinds = ['steps', 'layer counts', 'places', 'pointing', 'drawing', 'layout', 'list', 'class', 'document'];
  const works = { ...Object.fromEntries(kinds.map((kind) => [kind, nothing])), ...own } as Handlers;
  const take = serveRequests(works, (one) => news.push(one));
  const materials = shelf();
  const send = (message: ToWorker) => take(structuredClone(message));
  send({ kind: 'project', project: 'folio', file: folio(), materials });
  return {
    news,
    send,
    ask: (by: number, n: number, request: Request, values: Record<string, number> = {}) =>
      send({ kind: 'ask', by, n, project: 'folio', size: { edition: 'metric', values, options: {} }, request }),
    said: (count: number) => vi.waitFor(() => expect(news.length).toBeGreaterThanOrEqual(count), PATIENT),
  };
}

/** An answer that the steps of a test can be told by. */
const counts = (...all: string[]) => ({ kind: 'answer', value: all, isLast: true });
const settle = () => new Promise((done) => setTimeout(done, 20));

it('twenty parts of a page share one pattern', async () => {
  const seen = new Set<Pattern>();
  const drawing: Handler<'drawing'> = (pattern) => void seen.add(pattern);
  const worker = started({ drawing: async () => drawing });
  for (let by = 1; by <= 20; by++) worker.ask(by, 1, { kind: 'drawing', drawing: { of: 'step', id: `${by}` } });
  await worker.said(20);
  expect(seen.size).toBe(1);
  expect(worker.news.map(({ by }) => by)).toEqual(Array.from({ length: 20 }, (_, i) => i + 1));

  // Another size is another pattern; the one of before is still known.
  worker.ask(1, 2, { kind: 'drawing', drawing: { of: 'step', id: '1' } }, { 'card width': 110 });
  await worker.said(21);
  worker.ask(1, 3, { kind: 'drawing', drawing: { of: 'step', id: '1' } });
  await worker.said(22);
  expect(seen.size).toBe(2);
  expect([...seen].map(({ measures }) => measures['card width']!.value)).toEqual([105, 110]);
});

it('a project that was edited is read anew', async () => {
  const steps: Handler<'steps'> = ({ title }) => [title as never];
  const worker = started({ steps: async () => steps });
  worker.ask(1, 1, { kind: 'steps' });
  await worker.said(1);
  worker.send({ kind: 'project', project: 'folio', file: { ...folio(), title: 'Edited' }, materials: {} });
  worker.ask(1, 2, { kind: 'steps' });
  await worker.said(2);
  expect(worker.news.map((one) => one.kind === 'answer' && one.value)).toEqual([[folio().title], ['Edited']]);
});

it('of what waits, only a client’s newest request is worked out', async () => {
  const asked: string[] = [];
  const places: Handler<'places'> = (_, { step }) => (asked.push(step), []);
  const worker = started({ places: async () => places });
  for (const [n, step] of ['first', 'second', 'third'].entries()) worker.ask(1, n + 1, { kind: 'places', step });
  worker.ask(2, 1, { kind: 'places', step: 'other' });
  worker.ask(3, 1, { kind: 'places', step: 'given up' });
  worker.send({ kind: 'stop', by: 3 });
  await worker.said(2);
  await settle();
  expect(asked).toEqual(['third', 'other']);
  expect(worker.news.map(({ by, n }) => [by, n])).toEqual([
    [1, 3],
    [2, 1],
  ]);
});

it('a long search tells how far it is, stops no drawing, and ends when its client asks anew', async () => {
  let tries = 0;
  const search: Handler<'layer counts'> = async (_, __, { send, progress, pause }) => {
    for (;;) {
      tries++;
      send([String(tries)]);
      progress(0.5);
      await pause();
    }
  };
  let isLong = true;
  const worker = started({
    'layer counts': async () => (isLong ? search : () => ['7']),
    places: async () => () => [],
  });
  worker.ask(1, 1, { kind: 'layer counts' });
  await worker.said(4);
  worker.ask(2, 1, { kind: 'places', step: 'hem' });
  await vi.waitFor(() => expect(worker.news.some(({ by }) => by === 2)).toBe(true), PATIENT);
  expect(worker.news.slice(0, 2)).toEqual([
    { by: 1, n: 1, kind: 'answer', value: ['1'], isLast: false },
    { by: 1, n: 1, kind: 'progress', share: 0.5 },
  ]);

  isLong = false;
  worker.ask(1, 2, { kind: 'layer counts' });
  await vi.waitFor(() => expect(worker.news.at(-1)).toEqual({ by: 1, n: 2, ...counts('7') }), PATIENT);
  const before = tries;
  await settle();
  expect(tries).toBe(before);
  // Nothing is said of what was replaced.
  expect(worker.news.filter(({ kind }) => kind === 'error')).toEqual([]);
});

it('says in a sentence why there is no answer, and keeps what only a programmer understands', async () => {
  const logged = vi.spyOn(console, 'error').mockImplementation(() => {});
  const fails = (error: Error) => async () => () => {
    throw error;
  };
  const worker = started({
    document: fails(new RequestError('Your project leaves this document out, so there is nothing to print.')),
    list: fails(new TypeError('x is undefined')),
  });
  const setting = { paper: 'A4', largePrint: false, language: 'en' } as const;
  const fonts = { regular: '', strong: '' };
  worker.ask(1, 1, { kind: 'document', document: { name: 'none', setting, fonts, times: {} } });
  worker.ask(2, 1, { kind: 'list', currency: 'EUR' });
  await worker.said(2);
  expect(worker.news).toEqual([
    {
      ...{ by: 1, n: 1, kind: 'error' },
      message: 'Your project leaves this document out, so there is nothing to print.',
    },
    {
      ...{ by: 2, n: 1, kind: 'error' },
      message: 'This could not be worked out. Load the page again, and try once more.',
    },
  ]);
  expect(logged).toHaveBeenCalledOnce();
  logged.mockRestore();
});

it('tells the page when a part of the worker cannot be fetched', async () => {
  const worker = started({});
  worker.ask(1, 1, { kind: 'steps' });
  await worker.said(1);
  expect(worker.news).toEqual([{ by: 1, n: 1, kind: 'unfetched' }]);
});
