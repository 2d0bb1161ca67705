/** From the words of a step to the moves of the cloth: one small function for each verb. */
import { attach } from '../../cloth/attach.ts';
import { bind } from '../../cloth/bind.ts';
import { boxCorner } from '../../cloth/box.ts';
import { boxOf } from '../../cloth/size.ts';
import { clipCorners, grade } from '../../cloth/allowances.ts';
import { closeGap } from '../../cloth/gap.ts';
import { direction, plus } from '../../geometry/point.ts';
import { edgeOn, edgesOn, waysInside } from './edges.ts';
import { edgesOf } from './titles.ts';
import { fail, ok, quote } from '../../measure/index.ts';
import { flatFelledSeam, frenchSeam } from '../../cloth/enclosed.ts';
import { flip, fold } from '../../cloth/index.ts';
import { fuse, lay } from '../../cloth/lay.ts';
import { gather } from '../../cloth/gather.ts';
import { hem } from '../../cloth/hem.ts';
import { inTurn } from '../../cloth/group.ts';
import { join } from '../../cloth/seam.ts';
import { lineThrough } from '../../geometry/index.ts';
import { noted } from '../../cloth/work.ts';
import { plainName } from '../names.ts';
import { pleat, tuck } from '../../cloth/pleat.ts';
import { sewn, topstitch } from '../../cloth/stitch.ts';
import { sewRound } from '../../cloth/sew-round.ts';
import { trim } from '../../cloth/trim.ts';
import { turn } from '../../cloth/turn.ts';
import type { BoxCorner } from '../../cloth/box.ts';
import type { ClothFault, Sewn, StitchKind, Work } from '../../cloth/index.ts';
import type { Line } from '../../geometry/index.ts';
import type { Pattern } from '../pattern.ts';
import type { Result } from '../../measure/index.ts';
import type { Seam, SeamLayer } from '../../cloth/seam.ts';
import type { StepPlan } from './plan.ts';
import type { Verb } from './verbs.ts';

type Adapter = (step: StepPlan, works: readonly Work[], pattern: Pattern) => Sewn;

/** Does a step. Faults are those of the cloth. */
export const sew = (step: StepPlan, works: readonly Work[], pattern: Pattern): Sewn =>
  adapters[step.verb](step, works, pattern);

/** Where a row is sewn when the step does not say, in mm. Common practice, no source. */
const usual: Record<'inch' | 'metric', { baste: number; topstitch: number; edgestitch: number }> = {
  inch: { baste: 25.4 / 8, topstitch: 25.4 / 8, edgestitch: 25.4 / 16 },
  metric: { baste: 3, topstitch: 3, edgestitch: 2 },
};

const seamOf = ({ mm }: StepPlan, { making }: Pattern): number => mm['seam'] ?? making?.seam ?? 0;

const adapters: Record<Verb, Adapter> = {
  fuse: ({ mm }, [stay, work]) => {
    const inset = mm['inset'];
    return fuse(work!, stay!, inset === undefined ? {} : { inset: { left: inset, bottom: inset } });
  },

  join: (step, works, pattern) => {
    const { words, mm } = step;
    const named = edgesOf(words.at);
    // What is caught between lies between; the step names it after the two that are joined.
    const [first, second, ...caught] = works.map((work, i) => ({ work, asked: named[i] ?? named[0]! }));
    const layers: SeamLayer[] = [];
    for (const { work, asked } of [first!, ...caught, second!]) {
      const edge = edgeOn(work, asked);
      if (!edge.ok) return edge;
      layers.push({ work, edge: edge.value.name });
    }
    const press = pressing(step, named[0]!);
    // What is caught, such as a zip, stays where it is sewn; both works are turned away from it, wrong sides together.
    // Then the first lies below and face down, so that the work is turned over.
    const away = caught.length > 0 && words.press === undefined;
    if (away) {
      layers[0] = { ...layers[0]!, opens: 'under' };
      layers[layers.length - 1] = { ...layers.at(-1)!, opens: 'over' };
    }
    const opened = join(layers, { allowance: seamOf(step, pattern), press });
    const joined = away && opened.ok ? flip(opened.value, 'level') : opened;
    if (!joined.ok || mm['topstitch'] === undefined) return joined;
    return topstitch(joined.value, { line: besideSeam(joined.value, mm['topstitch'], press) });
  },

  lay: ({ words }, [work, on]) => {
    const named = edgesOf(words.at);
    const face = words.face ?? 'up';
    if (named.length === 0) return lay(on!, work!, { face });
    const [below, above] = [edgeOn(on!, named[0]!), edgeOn(work!, named[1] ?? named[0]!)];
    if (!below.ok) return below;
    if (!above.ok) return above;
    return lay(on!, work!, { edges: [below.value.name, above.value.name], face });
  },

  pleat: (step, [work], pattern) => {
    const plan = pattern.pieces[pieceOf(pattern, step.takes[0]!.name)]?.pleats;
    const from = edgeOn(work!, 'bottom');
    if (!plan)
      return fail({ code: 'unknown-piece', message: `${quote(step.takes[0]!.name)} has no pleats under pieces.` });
    return from.ok ? pleat(work!, { from: from.value.name, folds: plan.folds }) : from;
  },

  tuck: ({ words, mm }, [work]) => {
    const from = edgeOn(work!, words.from ?? 'top');
    return from.ok ? tuck(work!, { from: from.value.name, at: mm['at']!, depth: mm['depth']! }) : from;
  },

  hem: ({ words, mm }, [work]) => {
    const edges = edgesOn(work!, words.at === undefined ? ['all'] : edgesOf(words.at));
    if (!edges.ok) return edges;
    const then = mm['then'];
    const { corners = 'square' } = words;
    return hem(work!, {
      edges: edges.value.map(({ name }) => name),
      turn: mm['fold']!,
      corners,
      ...(then !== undefined && { then }),
    });
  },

  'sew round': (step, [lower, upper, ...loops], pattern) => {
    const { words, mm } = step;
    const caught: Work[] = [];
    const named = edgesOf(words.at);
    for (const loop of loops) {
      const [on, own] = [edgeOn(lower!, named[0] ?? 'top'), edgeOn(loop, named[1] ?? named[0] ?? 'top')];
      if (!on.ok) return on;
      if (!own.ok) return own;
      const laid = lay(lower!, loop, { edges: [on.value.name, own.value.name] });
      if (!laid.ok) return laid;
      caught.push(withoutFirst(laid.value, lower!));
    }
    return sewRound(lower!, upper!, {
      allowance: seamOf(step, pattern),
      open: [words.open ?? []].flat(),
      ...(words.gap && { gap: { edge: words.gap.edge, length: mm['gap'] ?? 0 } }),
      ...(caught.length > 0 && { caught }),
    });
  },

  turn: (_, [work]) => turn(work!),

  'close gap': ({ words }, [work]) => closeGap(work!, words.stitch === 'by machine' ? 'edgestitch' : 'slipstitch'),

  'turn over': (_, [work]) => flip(work!),

  baste: (step, [work], pattern) => rows(step, work!, 'baste', usual[pattern.edition].baste),

  topstitch: (step, [work], pattern) => rows(step, work!, 'topstitch', usual[pattern.edition].topstitch),

  edgestitch: (step, [work], pattern) => rows(step, work!, 'edgestitch', usual[pattern.edition].edgestitch),

  fold: ({ words, mm }, [work]) => {
    const line = lineFrom(work!, words.from ?? 'top', mm['at'] ?? 0);
    const only = words.only && new Set([words.only].flat());
    const plies = only && new Set(work!.plies.flatMap((ply) => (only.has(ply.piece) ? ply.id : [])));
    return fold(work!, { line, lands: words.lands ?? 'over', ...(plies && { plies }) });
  },

  press: (_, [work]) => ok(work!),

  'french seam': (step, [a, b], pattern) => {
    const edges = bothEdges(step, a!, b!);
    if (!edges.ok) return edges;
    // 3/8 and 1/4 in of an allowance of 5/8 in (Oklahoma Cooperative Extension, 4-H Construction Card 810).
    const [first, second] = [(seamOf(step, pattern) * 3) / 5, (seamOf(step, pattern) * 2) / 5];
    return frenchSeam(a!, b!, { edges: edges.value, first, second, trimTo: second / 2 });
  },

  'flat-felled seam': (step, [a, b], pattern) => {
    const edges = bothEdges(step, a!, b!);
    if (!edges.ok) return edges;
    // 1/4 in trimmed to and 1/4 in turned of an allowance of 5/8 in (Whafi, How to sew a flat-felled seam).
    const allowance = seamOf(step, pattern);
    return flatFelledSeam(a!, b!, { edges: edges.value, allowance, trimTo: 0.4 * allowance, turn: 0.4 * allowance });
  },

  trim: ({ words, mm }, [work]) => {
    const [width, height, by] = [mm['size 0'], mm['size 1'], mm['by']];
    if (width !== undefined && height !== undefined) return trim(work!, { size: { width, height } });
    const edges = edgesOn(work!, edgesOf(words.at));
    return edges.ok ? inTurn(work!, edges.value, (now, { name }) => trim(now, { edge: name, by: by ?? 0 })) : edges;
  },

  grade: (step, [work], pattern) => {
    const least = step.mm['by'] ?? seamOf(step, pattern) / 3;
    return grade(work!, [least, 2 * least]);
  },

  'clip corners': ({ mm }, [work]) => clipCorners(work!, mm['by']),

  gather: ({ words, mm }, [work]) => {
    const edge = edgeOn(work!, edgesOf(words.at)[0] ?? '');
    return edge.ok ? gather(work!, { edge: edge.value.name, to: mm['to'] ?? 0 }) : edge;
  },

  'box corner': (step, [work], pattern) => {
    const { words, mm } = step;
    const from = words.from === 'raw edge' ? 'raw edge' : 'seam';
    // Turned, a bag has its allowances inside.
    const isTurned = work!.done.some(({ did }) => did === 'turn');
    const allowance = isTurned ? 0 : seamOf(step, pattern);
    return inTurn(work!, edgesOf(words.at), (now, corner) =>
      boxCorner(now, { corner: corner as BoxCorner['corner'], square: mm['square']!, from, allowance }),
    );
  },

  bind: ({ words, mm }, [work, strip]) => {
    const edge = edgeOn(work!, edgesOf(words.at)[0] ?? '');
    return edge.ok ? bind(work!, strip!, { edge: edge.value.name, width: mm['width']! }) : edge;
  },

  casing: (step, [work], pattern) => {
    const { words, mm } = step;
    const edges = edgesOn(work!, edgesOf(words.at));
    if (!edges.ok) return edges;
    const turn = mm['then'] ?? seamOf(step, pattern);
    const names = edges.value.map(({ name }) => name);
    return hem(work!, { edges: names, turn, then: mm['width']! + CASING, inside: CASING });
  },

  attach: ({ words, mm }, [work]) => {
    const { x, y } = boxOf(work!.plies);
    const at = { x: x + (mm['at 0'] ?? Number.NaN), y: y + (mm['at 1'] ?? Number.NaN) };
    return attach(work!, { name: words.attach!, at, ...(words.through !== undefined && { through: words.through }) });
  },
};

/** The row of a casing runs this far inside its inner fold, in mm, beside the width that the cord needs. */
const CASING = 2;

/** The edges of two works that are sewn together; a single one stands for both. */
function bothEdges({ words }: StepPlan, a: Work, b: Work): Result<[string, string], ClothFault> {
  const named = edgesOf(words.at);
  const first = edgeOn(a, named[0] ?? '');
  if (!first.ok) return first;
  const second = edgeOn(b, named[1] ?? named[0] ?? '');
  return second.ok ? ok([first.value.name, second.value.name]) : second;
}

/** Rows along the edges that the step names. */
function rows({ words, mm }: StepPlan, work: Work, kind: StitchKind, usually: number): Sewn {
  const edges = edgesOn(work, edgesOf(words.at));
  if (!edges.ok) return edges;
  const { width, height } = boxOf(work.plies);
  const ways = waysInside(edges.value, mm['by'] ?? usually, width + height);
  const after = ways.reduce((now, way) => sewn(now, kind, way), work);
  const stitches = after.stitches.slice(work.stitches.length);
  if (stitches.some(({ runs }) => runs.length === 0)) {
    return fail({ code: 'misses', message: 'The row of stitches misses the cloth.' });
  }
  return ok(noted(after, { did: kind, stitches: stitches.map(({ id }) => id) }));
}

/** Where the allowances go, as the cloth calls it. The second work comes to lie beyond the edge of the first. */
function pressing({ words, takes }: StepPlan, edge: string): NonNullable<Seam['press']> {
  const { press = 'as they fall' } = words;
  if (press === 'open' || press === 'unopened') return press;
  const side = edge.split(' ').at(-1)!;
  if (press === side || press === ways[side]) return 'to second';
  if (press === `to ${takes[0]!.name}` || ways[opposite[side] ?? ''] === press) return 'to first';
  return 'to second';
}

/** What lies beyond an edge. */
const ways: Readonly<Record<string, string>> = { top: 'up', bottom: 'down', left: 'left', right: 'right' };
const opposite: Readonly<Record<string, string>> = { top: 'bottom', bottom: 'top', left: 'right', right: 'left' };

/** A line beside the last seam, on the side that its allowances were pressed to. */
function besideSeam(work: Work, by: number, press: Seam['press']): Line {
  const { from, to } = work.stitches.at(-1)!.runs[0]!;
  const line = lineThrough(from, to);
  const way = direction(line.angle);
  // The cloth of the first work lies left of the seam.
  const off = press === 'to first' ? by : -by;
  return { at: plus(line.at, { x: -way.y * off, y: way.x * off }), angle: line.angle };
}

/** The line across a work, so far from a side of the box round it; what moves lies right of it. */
function lineFrom(work: Work, side: string, by: number): Line {
  const { x, y, width, height } = boxOf(work.plies);
  switch (side) {
    case 'bottom':
      return { at: { x, y: y + by }, angle: 0 };
    case 'left':
      return { at: { x: x + by, y }, angle: 270 };
    case 'right':
      return { at: { x: x + width - by, y }, angle: 90 };
    default:
      return { at: { x, y: y + height - by }, angle: 180 };
  }
}

/** The name of a piece as the pattern has it. */
const pieceOf = ({ pieces }: Pattern, name: string): string =>
  Object.keys(pieces).find((one) => plainName(one) === plainName(name)) ?? name;

/** What was laid on a work, by itself and where it lies. */
const withoutFirst = (both: Work, first: Work): Work => ({
  plies: both.plies.slice(first.plies.length),
  stitches: both.stitches.slice(first.stitches.length),
  marks: both.marks.slice(first.marks.length),
  done: [],
});
