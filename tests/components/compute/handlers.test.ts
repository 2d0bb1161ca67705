/** What the worker really works out, asked by the protocol. Sizes by hand from the project file of the folio. */
import { beforeAll, describe, expect, it } from 'vitest';
import { serveRequests } from '../../../components/compute/serve-requests.ts';
import type { Answer, Kind, FromWorker, Request } from '../../../components/compute/protocol.ts';
import { handlers } from '../../../components/compute/handlers.ts';
import { placeUnder } from '../../../components/words/layer-study/layers-on-sheet.ts';
import { folio, shelf } from '../../core/project/files.ts';

let hear: (news: FromWorker) => void;
const take = serveRequests(handlers, (news) => hear(structuredClone(news)));
beforeAll(() => take({ kind: 'project', project: 'folio', file: folio(), materials: shelf() }));

let n = 0;
/** The last answer to a request. */
const ask = <K extends Kind>(request: Request<K>, options: Record<string, boolean> = {}) =>
  new Promise<Answer<K>>((done, failed) => {
    hear = (news) => {
      if (news.kind === 'answer' && news.isLast) done(news.value);
      if (news.kind === 'error' || news.kind === 'unfetched') failed(new Error(JSON.stringify(news)));
    };
    const size = { edition: 'metric' as const, values: { 'card width': 110 }, options };
    take({ kind: 'ask', by: 1, n: ++n, project: 'folio', size, request: request as Request });
  });

describe('of a folio for cards 110 mm wide', () => {
  it('every step, with its size', async () => {
    const steps = await ask<'steps'>({ kind: 'steps' });
    expect(steps.map((step) => step.n)).toEqual(steps.map((_, i) => i + 1));
    // 110 + 2 * 3 + 2 * 10 = 136 mm; the height is that of the lesson, 183 mm.
    expect(steps.find(({ id }) => id === 'sew-round')!.size).toMatchObject({
      width: expect.closeTo(136, 6),
      height: expect.closeTo(183, 6),
    });
    expect(steps.at(-1)!.of).toBe(steps.length);
  });

  it('the layers after each step, none of them fewer than one', async () => {
    const steps = await ask<'steps'>({ kind: 'steps' });
    const counts = await ask<'layer counts'>({ kind: 'layer counts' });
    expect(counts).toHaveLength(steps.length);
    expect(Math.min(...counts.map((words) => parseInt(words)))).toBeGreaterThanOrEqual(1);
    // The pleats, their interfacing among them.
    expect(counts[1]).toMatch(/^\d+ \(\d+\)$/);
  });

  it('layers as the prose says them, those of the worst step for all', async () => {
    const asked = ['layers of hold-pleats', 'layers of the project', 'layers of topstitch-flap', 'layers of nothing'];
    const said = await ask<'layers said'>({ kind: 'layers said', asked });
    const counts = await ask<'layer counts'>({ kind: 'layer counts' });
    const steps = await ask<'steps'>({ kind: 'steps' });
    const [, layers, fused] = /^(\d+) \((\d+)\)$/.exec(counts[steps.findIndex(({ id }) => id === 'hold-pleats')]!)!;
    expect(said[0]).toBe(`${layers} layers, ${fused} of them interfacing`);
    expect(parseInt(said[1]!)).toBe(Math.max(...counts.map((words) => parseInt(words))));
    expect(said[3]).toBeUndefined();
    const without = await ask<'layers said'>({ kind: 'layers said', asked }, { flap: false });
    expect([said[2] === undefined, without[2] === undefined]).toEqual([false, true]);
  });

  it('a drawing, or none where an option leaves the step out', async () => {
    const drawing = { of: 'step', id: 'sew-round' } as const;
    const drawn = await ask<'drawing'>({ kind: 'drawing', drawing });
    expect(drawn!.scene.text.join(' ')).toContain('136 millimetres wide and 183 millimetres high');
    const flap = { kind: 'drawing', drawing: { of: 'step', id: 'flap' } } as const;
    expect(await ask<'drawing'>(flap)).toBeDefined();
    expect(await ask<'drawing'>(flap, { flap: false })).toBeUndefined();
  });

  it('the places of the layers lie on their drawing', async () => {
    const places = await ask<'places'>({ kind: 'places', step: 'sew-round' });
    const drawn = await ask<'drawing'>({ kind: 'drawing', drawing: { of: 'layers', id: 'sew-round', thickness: {} } });
    expect(drawn!.places!.map((place) => place.n)).toEqual(places.map((place) => place.n));
    const [first] = drawn!.places!;
    const [ring] = first!.rings;
    const middle = { x: (ring![0]!.x + ring![2]!.x) / 2, y: (ring![0]!.y + ring![2]!.y) / 2 };
    expect(placeUnder({ places: drawn!.places! }, middle)).toBeDefined();
    expect(placeUnder({ places: drawn!.places! }, { x: -1, y: -1 })).toBeUndefined();
  });

  it('what one maker buys', async () => {
    const list = await ask<'list'>({ kind: 'list', currency: 'EUR' });
    expect(list.group).toMatchObject({ makers: 1, spares: 0 });
    expect(list.lines.length).toBeGreaterThan(3);
  });
});
