/**
 * How short cutting layouts come out on published instances, beside the best packing libraries of the package registry.
 *
 *     node tests/bench/layout.ts --data <folder> [--seconds 10] [--sets C,BKW-N] [--only free,turned,straight,outlines]
 *
 * The folder holds rect-strip.json, guillotine-strip.json and irregular.json; nothing of it is copied. Every layout,
 * ours and theirs, is checked before its length counts. Numbers are per cent over the published optimum. Times are of
 * the processor, not of the clock: what else the machine does changes none of them.
 */
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { polygon, rectangle } from '../../src/core/geometry/index.ts';
import { layOut, searchLayouts } from '../../src/core/layout/index.ts';
import { faults } from '../core/layout/verify.ts';
import type { Cloth, Demand, LayOptions, Layout } from '../../src/core/layout/index.ts';

type Strip = {
  name: string;
  set?: string;
  stripWidth: number;
  optimalHeight: number | null;
  optimalHeightRotation?: number | null;
  items: [number, number, number][];
};

const { values: args } = parseArgs({
  options: {
    data: { type: 'string' },
    seconds: { type: 'string', default: '10' },
    sets: { type: 'string' },
    only: { type: 'string', default: 'free,turned,straight,outlines' },
  },
});
if (args.data === undefined) {
  console.log('Say where the instances are: --data <folder>.');
  process.exit(0);
}
const folder = resolve(args.data);
const seconds = Number(args.seconds);
const sets = args.sets?.split(',');
const only = args.only.split(',');
const read = async <T>(name: string): Promise<T> => JSON.parse(await readFile(`${folder}/${name}`, 'utf8')) as T;

/** A library's way to lay rectangles: the height it reaches, or undefined if it failed. */
type Library = { name: string; lay: (strip: Strip, turns: boolean) => number | undefined };
type Rect = { width: number; height: number };
type Put = Rect & { x: number; y: number };

/** The height of what a library laid, once it is sure that all is there, inside and apart. */
function checked(put: Put[], wanted: Rect[], width: number, turns: boolean): number | undefined {
  const key = ({ width: w, height: h }: Rect): string => (turns ? `${Math.min(w, h)} ${Math.max(w, h)}` : `${w} ${h}`);
  if (put.map(key).sort().join() !== wanted.map(key).sort().join()) return undefined;
  if (put.some((a) => a.x < 0 || a.y < 0 || a.x + a.width > width)) return undefined;
  const apart = (a: Put, b: Put): boolean =>
    a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;
  if (put.some((a, i) => put.slice(i + 1).some((b) => !apart(a, b)))) return undefined;
  return Math.max(...put.map((a) => a.y + a.height));
}

/** The least height at which a library that packs bins still gets all into one. */
function bisect(strip: Strip, turns: boolean, pack: (height: number) => Put[] | undefined): number | undefined {
  const wanted = rectsOf(strip);
  const area = wanted.reduce((sum, r) => sum + r.width * r.height, 0);
  const tallest = Math.max(...wanted.map((r) => (turns ? Math.min(r.width, r.height) : r.height)));
  let low = Math.max(tallest, Math.ceil(area / strip.stripWidth));
  let high = wanted.reduce((sum, r) => sum + Math.max(r.width, r.height), 0);
  let best: number | undefined;
  while (low <= high) {
    const middle = Math.floor((low + high) / 2);
    const put = pack(middle);
    const height = put && checked(put, wanted, strip.stripWidth, turns);
    if (height !== undefined) {
      best = Math.min(best ?? Infinity, height);
      high = height - 1;
    } else low = middle + 1;
  }
  return best;
}

const rectsOf = (strip: Strip): Rect[] =>
  strip.items.flatMap(([width, height, count]) => Array.from({ length: count }, () => ({ width, height })));

// What is used of the libraries. They are loaded by path: their packages do not name these files as ways in.
type MaxRects = {
  MaxRectsPacker: new (
    width: number,
    height: number,
    padding: number,
    options: object,
  ) => {
    addArray: (rects: object[]) => void;
    bins: { rects: Put[] }[];
  };
  Rectangle: new (width: number, height: number) => object;
};
type BinPacking = {
  pack2D: (task: object) => { packedBins: { boxes: Put[] }[] };
} & Record<'BestShortSideFit' | 'BestLongSideFit' | 'BestAreaFit' | 'BottomLeft', new () => object>;
type Pack = (task: object, options: object) => Put[][] | null;
type Guillotine = { packer?: Pack; default?: { packer: Pack } };

/** The libraries, each in the way of calling it that does best. */
async function others(): Promise<Library[]> {
  const home = fileURLToPath(new URL('../..', import.meta.url));
  const load = async <T>(path: string): Promise<T> =>
    (await import(pathToFileURL(`${home}/node_modules/${path}`).href)) as T;
  const found: Library[] = [];
  const maxrects = await load<MaxRects>('maxrects-packer/dist/maxrects-packer.mjs');
  found.push({
    name: 'maxrects-packer',
    lay: (strip, turns) =>
      least(
        [0, 1, 2].map((logic) =>
          bisect(strip, turns, (height) => {
            const options = { smart: true, pot: false, square: false, allowRotation: turns, logic };
            const packer = new maxrects.MaxRectsPacker(strip.stripWidth, height, 0, options);
            packer.addArray(rectsOf(strip).map((r) => new maxrects.Rectangle(r.width, r.height)));
            if (packer.bins.length !== 1) return undefined;
            return packer.bins[0]!.rects.map(({ x, y, width, height }: Put) => ({ x, y, width, height }));
          }),
        ),
      ),
  });
  const binpacking = await load<BinPacking>('binpackingjs/dist/esm/2d/index.js');
  found.push({
    name: 'binpackingjs',
    lay: (strip, turns) =>
      least(
        (['BestShortSideFit', 'BestLongSideFit', 'BestAreaFit', 'BottomLeft'] as const).map((heuristic) =>
          bisect(strip, turns, (height) => {
            const boxes = rectsOf(strip)
              .sort((a, b) => b.width * b.height - a.width * a.height)
              .map((r) => ({ ...r, constrainRotation: !turns }));
            const bins = [{ width: strip.stripWidth, height }];
            const result = binpacking.pack2D({ bins, boxes, heuristic: new binpacking[heuristic]() });
            return result.packedBins[0]?.boxes.map(({ x, y, width, height }: Put) => ({ x, y, width, height }));
          }),
        ),
      ),
  });
  const guillotine = await load<Guillotine>('guillotine-packer/dist/guillotine-packer.umd.js');
  found.push({
    name: 'guillotine-packer',
    lay: (strip, turns) =>
      bisect(strip, turns, (binHeight) => {
        const items = rectsOf(strip).map((r, i) => ({ name: `${i}`, ...r }));
        const pack = guillotine.packer ?? guillotine.default!.packer;
        try {
          const bins = pack({ binHeight, binWidth: strip.stripWidth, items }, { allowRotation: turns });
          return bins?.length === 1 ? bins[0] : undefined;
        } catch {
          // It throws where a piece does not fit into the bin.
          return undefined;
        }
      }),
  });
  return found;
}

const least = (heights: (number | undefined)[]): number | undefined => {
  const known = heights.filter((height) => height !== undefined);
  return known.length > 0 ? Math.min(...known) : undefined;
};

/** Our layout after a tenth of a second and after the given time, and the bound. */
function ours(demand: Demand, width: number, options: LayOptions): { soon: number; late: Layout; ms: number } {
  const cloths: Cloth[] = [{ name: 'strip', kind: 'bolt', width }];
  const began = process.cpuUsage();
  const spent = (): number => {
    const { user, system } = process.cpuUsage(began);
    return (user + system) / 1000;
  };
  let soon = Infinity;
  let late: Layout | undefined;
  const limits = { tries: Infinity, cancelled: () => spent() >= 1000 * seconds };
  for (const { better } of searchLayouts(demand, cloths, { ...options, ...limits })) {
    if (!better) continue;
    late = better;
    if (spent() <= 100) soon = better.length;
  }
  const ms = spent();
  const wrong = faults(late!, demand, cloths, options);
  if (wrong.length > 0 || late!.left.length > 0) throw new Error(`Not a layout: ${wrong.join('; ')}`);
  return { soon, late: late!, ms };
}

const over = (length: number | undefined, best: number): string =>
  length === undefined || !Number.isFinite(length) ? '–' : ((length / best - 1) * 100).toFixed(2);
const row = (cells: (string | number)[]): void => console.log(`| ${cells.join(' | ')} |`);
const mean = (numbers: number[]): number => numbers.reduce((sum, n) => sum + n, 0) / numbers.length;

function rectangles(title: string, strips: Strip[], turns: boolean, options: LayOptions, libraries: Library[]): void {
  console.log(`\n## ${title}: per cent over the optimum\n`);
  row([
    'instance',
    'optimum',
    'bound',
    '100 ms',
    `${seconds} s`,
    'ended ms',
    'proven',
    ...libraries.map((one) => one.name),
  ]);
  row(Array.from({ length: 7 + libraries.length }, () => '---'));
  const means = new Map<string, number[][]>();
  for (const strip of strips) {
    const best = turns ? strip.optimalHeightRotation : strip.optimalHeight;
    if (!best) continue;
    const demand = strip.items.map(([width, height, count], i) => ({
      name: `${i}`,
      outline: rectangle(width, height),
      count,
      grain: turns ? ('any' as const) : ('lengthwise' as const),
    }));
    const { soon, late, ms } = ours(demand, strip.stripWidth, options);
    const theirs = libraries.map((library) => library.lay(strip, turns));
    const all = [soon, late.length, ...theirs.map((height) => height ?? NaN)];
    const cells = all.map((length) => over(length, best));
    row([
      strip.name,
      best,
      Number(late.bound.length.toFixed(2)),
      cells[0]!,
      cells[1]!,
      Math.round(ms),
      late.proven ? 'yes' : '',
      ...cells.slice(2),
    ]);
    const set = strip.set ?? 'all';
    means.set(set, [...(means.get(set) ?? []), all.map((length) => (length / best - 1) * 100)]);
  }
  console.log();
  row(['set', 'instances', '100 ms', `${seconds} s`, ...libraries.map((one) => one.name)]);
  row(Array.from({ length: 4 + libraries.length }, () => '---'));
  for (const [set, rows] of means)
    row([set, rows.length, ...rows[0]!.map((_, c) => mean(rows.map((r) => r[c]!)).toFixed(2))]);
}

type Irregular = {
  name: string;
  stripWidth: number;
  bestDensityPct: number;
  totalArea: number;
  items: { id: number; demand: number; rotations: number[]; polygon: [number, number][] }[];
};

function outlines(sets: Irregular[]): void {
  console.log('\n## Outlines: density in per cent\n');
  row(['set', 'best known', '100 ms', `${seconds} s`, 'points behind']);
  row(['---', '---', '---', '---', '---']);
  const behind: number[] = [];
  for (const set of sets) {
    // In these sets the strip runs along x; cloth runs along y. Scaled so that the tolerances of cloth are small beside it.
    const scale = 1000 / set.stripWidth;
    const demand = set.items.map((item) => ({
      name: `${item.id}`,
      outline: polygon(item.polygon.map(([x, y]) => ({ x: y * scale, y: x * scale }))),
      count: item.demand,
      grain: item.rotations.includes(90) ? ('any' as const) : ('lengthwise' as const),
      nap: item.rotations.length === 1 ? ('up' as const) : ('any' as const),
    }));
    const { soon, late } = ours(demand, 1000, {});
    const density = (length: number): number => (set.totalArea * scale * scale * 100) / (1000 * length);
    behind.push(set.bestDensityPct - density(late.length));
    row([
      set.name,
      set.bestDensityPct,
      density(soon).toFixed(2),
      density(late.length).toFixed(2),
      behind.at(-1)!.toFixed(2),
    ]);
  }
  console.log(`\nMean points behind: ${mean(behind).toFixed(2)}`);
}

const libraries = await others();
// Warm up, as was done when the libraries were first measured.
for (const manner of ['free', 'straight cuts'] as const)
  for (const grain of ['lengthwise', 'any'] as const) {
    const demand = Array.from({ length: 40 }, (_, i) => ({
      name: `${i}`,
      outline: rectangle(3 + ((i * 7) % 17), 2 + ((i * 5) % 23)),
      count: 1,
      grain,
    }));
    for (let n = 0; n < 3; n++) layOut(demand, [{ name: 'strip', kind: 'bolt', width: 60 }], { manner });
  }
const wanted = ({ set, name }: { set?: string; name: string }): boolean =>
  !sets || sets.includes(set ?? '') || sets.includes(name);
if (only.includes('free') || only.includes('turned')) {
  const strips = (await read<Strip[]>('rect-strip.json')).filter(wanted);
  if (only.includes('free')) rectangles('Rectangles, free, not turned', strips, false, {}, libraries);
  if (only.includes('turned')) rectangles('Rectangles, free, turned', strips, true, {}, libraries);
}
if (only.includes('straight')) {
  const { strip } = await read<{ strip: Strip[] }>('guillotine-strip.json');
  const own = libraries.filter((library) => library.name === 'guillotine-packer');
  rectangles('Straight cuts', strip.filter(wanted), false, { manner: 'straight cuts' }, own);
  rectangles('Straight cuts, turned', strip.filter(wanted), true, { manner: 'straight cuts' }, own);
}
if (only.includes('outlines')) outlines((await read<Irregular[]>('irregular.json')).filter(wanted));
