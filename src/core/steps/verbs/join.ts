import { direction, plus } from '../../geometry/point.ts';
import { edgeOn } from '../../cloth/sides.ts';
import { fail, ok, plainName, quote } from '../../measure/index.ts';
import { edges, length, optional, text, works, yes } from '../fields.ts';
import { eachAt, withBetween } from '../words.ts';
import { flip } from '../../cloth/index.ts';
import { join as joinLayers } from '../../cloth/seam.ts';
import { lineThrough } from '../../geometry/index.ts';
import { seam as seamField } from '../seams.ts';
import { sewnShutTogether } from '../../cloth/openings.ts';
import { topstitch } from '../../cloth/stitch.ts';
import { verb } from '../verb.ts';
import type { ClothFault } from '../../cloth/fault.ts';
import type { Line } from '../../geometry/index.ts';
import type { Result } from '../../measure/index.ts';
import type { Seam, SeamLayer } from '../../cloth/seam.ts';
import type { Work } from '../../cloth/index.ts';

export const join = verb({
  name: 'join',
  fields: {
    join: works('Seams two works edge to edge, right sides together, and presses: { join: [bag, facing], at: top }.', {
      least: 2,
      most: 2,
    }),
    at: edges(
      'the edge of each work, in order: [top, bottom]; a single one stands for both. Where several pieces have such an ' +
        'edge, name the piece too: facing top.',
    ),
    between: optional(
      works(
        'what is caught between the two, such as a zip. It lies on the first one, and its edge comes third. Unless press ' +
          'says otherwise both works are turned away from it, wrong sides together.',
      ),
    ),
    seam: seamField,
    press: optional(
      text(
        'where the allowances go: open, up, down, left, right, to the bag. Left out, to the second work; unopened ' +
          'leaves the works lying on one another.',
        {
          only: /^(open|up|down|left|right|unopened|to \S.*)$/u,
          code: 'unclear-press',
          not: 'Allowances are pressed open, up, down, left, right or to a work, not',
        },
      ),
    ),
    topstitch: optional(length('a row on the pressed seam, that far from it.')),
    eased: optional(yes('edges that differ a little in length are meant to; the longer one is eased in.')),
  },
  handling: 2,
  title: ({ join: joined, at, between }) => `Join ${eachAt(joined, at)}${withBetween(between)}`,
  tools: ({ press }) => ['machine', 'pins', ...(press === undefined ? [] : (['iron'] as const))],
  pressing: ({ press }) => (press === undefined ? undefined : 'a fold'),
  apply: ({ join: names, at, seam, press, topstitch: beside }, { join: joined, between = [] }, setting) => {
    // What is caught between lies between; the step names its edge after those of the two that are joined.
    const works = [...joined, ...between];
    const [first, second, ...caught] = works.map((work, i) => ({ work, asked: at[i] ?? at[0]! }));
    if (at.length > works.length) {
      const edge = at[works.length]!;
      const message = `${quote(edge)} belongs to none of the works: ${works.length} are sewn here, and ${at.length} edges are named.`;
      return fail({ code: 'too-many-edges', message, edge });
    }
    const layers: SeamLayer[] = [];
    for (const { work, asked } of [first!, ...caught, second!]) {
      const edge = edgeOn(work, asked);
      if (!edge.ok) return edge;
      layers.push({ work, edge: edge.value });
    }
    const shut = sewnShutTogether(layers);
    if (shut) return fail(shut);
    const to = pressedTo(press, at[0]!, names, joined);
    if (!to.ok) return to;
    // What is caught, such as a zip, stays where it is sewn; both works are turned away from it, wrong sides together.
    // Then the first lies below and face down, so that the work is turned over.
    const away = caught.length > 0 && press === undefined;
    if (away) {
      layers[0] = { ...layers[0]!, opens: 'under' };
      layers[layers.length - 1] = { ...layers.at(-1)!, opens: 'over' };
    }
    const opened = joinLayers(layers, { allowance: seam ?? setting.seam, press: to.value });
    const sewn = away && opened.ok ? flip(opened.value, 'level') : opened;
    if (!sewn.ok || beside === undefined) return sewn;
    return topstitch(sewn.value, { line: besideSeam(sewn.value, beside, away ? 'to first' : to.value) });
  },
});

/**
 * Where the allowances go, as the cloth calls it. The second work comes to lie beyond the edge of the first. `to …` names
 * one of the two, or a piece that only one of them has.
 */
function pressedTo(
  press: string | undefined,
  edge: string,
  names: readonly string[],
  joined: readonly Work[],
): Result<NonNullable<Seam['press']>, ClothFault> {
  if (press === undefined) return ok('to second');
  if (press === 'open' || press === 'unopened') return ok(press);
  const side = edge.split(' ').at(-1)!;
  const named = /^to (?:the )?(.+)$/u.exec(press)?.[1];
  if (named === undefined) return ok(press === beyond[opposite[side] ?? ''] ? 'to first' : 'to second');
  const isCalled = (one: string) => plainName(one) === plainName(named);
  const whole = names.findIndex(isCalled);
  const parts = joined.flatMap(({ plies }, i) => (plies.some(({ piece }) => isCalled(piece)) ? [i] : []));
  const of = whole >= 0 ? whole : parts.length === 1 ? parts[0] : undefined;
  if (of === 0 || of === 1) return ok(of === 0 ? 'to first' : 'to second');
  const message = `Allowances are pressed to one of the two works, and ${quote(named)} is neither.`;
  const fix = `Write ${[...new Set(names.slice(0, 2))].map((name) => quote(`press: to ${name}`)).join(' or ')}.`;
  return fail({ code: 'unknown-piece', message, field: 'press', fix });
}

/** What lies beyond an edge. */
const beyond: Readonly<Record<string, string>> = { top: 'up', bottom: 'down', left: 'left', right: 'right' };
const opposite: Readonly<Record<string, string>> = { top: 'bottom', bottom: 'top', left: 'right', right: 'left' };

/** A line beside the last seam, on the side that its allowances were pressed to. */
function besideSeam(work: Work, by: number, press: Seam['press']): Line {
  const { from, to } = work.stitches.at(-1)!.runs[0]!;
  const line = lineThrough(from, to);
  const way = direction(line.angle);
  // The cloth of the first work lies left of the seam; turned away from what is caught, that of both.
  const off = press === 'to first' ? by : -by;
  return { at: plus(line.at, { x: -way.y * off, y: way.x * off }), angle: line.angle };
}
