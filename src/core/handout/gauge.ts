import { lengthWriter } from '../drawing/lengths.ts';
import { box, polyline } from '../drawing/path.ts';
import { madeAs, slug } from './handout.ts';
import { cropped, line } from './place.ts';
import { OVERLAP, RIM, sheetsFor, tileName } from './tiles.ts';
import { trueScale } from './true-scale.ts';
import { typeOf } from './type.ts';
import type { Command } from '../drawing/path.ts';
import type { Shape } from '../drawing/scene.ts';
import type { Pleated } from '../drawing/folding.ts';
import type { Pattern } from '../project/pattern.ts';
import type { Box } from '../geometry/readings.ts';
import type { Handout, Page, HandoutSetting } from './handout.ts';
import type { TrueScale } from './true-scale.ts';
import type { Type } from './type.ts';

/** A length of the gauge as it lies on a sheet. */
type Length = { sheet: number; index: number; from: number; to: number; x: number };

/**
 * A strip of paper with the fold lines of a pleated piece at true scale, to lay beside the cloth. A long one is joined
 * from several lengths, as many to a sheet as it has room for.
 */
export function foldGauge(piece: Pleated, pattern: Pattern, setting: HandoutSetting): Handout {
  const type = typeOf(setting);
  const title = `Fold gauge: ${piece.label}`;
  const heading = { title, project: madeAs(pattern), edition: pattern.edition };
  const ground = trueScale(heading, setting, type, ['cut', 'valley', 'mountain']);
  const lengths = cutUp(piece, ground.room, type);
  const count = lengths.at(-1)!.sheet + 1;
  const pages = Array.from({ length: count }, (_, sheet): Page => {
    const here = lengths.filter((length) => length.sheet === sheet);
    const shapes = here.flatMap((length) => draw(piece, pattern, length, lengths.length, ground, type));
    return ground.page(
      count === 1 ? title : `${title}, sheet ${sheet + 1}`,
      sheet + 1,
      count,
      shapes,
      say(piece, pattern),
    );
  });
  return {
    name: `fold-gauge-${slug(piece.name)}`,
    title: `${pattern.title}: fold gauge, ${piece.label}`,
    language: setting.language ?? 'en',
    reader: 'maker',
    paper: setting.paper,
    pages,
    findings: [],
  };
}

const stripWidth = (type: Type): number => 13 * type.small;

/** Between two lengths on one sheet, in mm. */
const APART = 5;

function cutUp({ pleats }: Pleated, room: Box, type: Type): Length[] {
  const width = stripWidth(type);
  const perSheet = Math.max(1, Math.floor((room.width + APART) / (width + APART)));
  const count = sheetsFor(pleats.stripLength, room.height);
  // Equal lengths: no stump at the end.
  const each = (pleats.stripLength + 2 * RIM + (count - 1) * OVERLAP) / count;
  return Array.from({ length: count }, (_, index) => {
    const from = index * (each - OVERLAP) - RIM;
    const column = index % perSheet;
    return {
      sheet: Math.floor(index / perSheet),
      index,
      from,
      to: from + each,
      x: room.x + RIM + column * (width + APART),
    };
  });
}

function draw(
  piece: Pleated,
  pattern: Pattern,
  length: Length,
  count: number,
  { room }: TrueScale,
  type: Type,
): Shape[] {
  const { pleats } = piece;
  const { set } = lengthWriter(pattern);
  const width = stripWidth(type);
  const { x, from, to, index } = length;
  const low = room.y + room.height - RIM;
  const y = (at: number) => low - (at - from);
  const window = { x: x - 1, y: y(to), width: width + 2, height: to - from };
  const name = (n: number) => tileName({ row: n, column: 0 }).replace('1', '');
  const shapes: Shape[] = [];
  const add = (what: string, role: 'cut' | 'valley' | 'mountain', path: readonly Command[]) => {
    const seen = cropped(path, window);
    if (seen.length > 0) shapes.push({ kind: 'path', name: what, role, path: seen });
  };
  const level = (at: number) => polyline({ x, y: y(at) }, { x: x + width, y: y(at) });
  add('strip', 'cut', box(x, y(pleats.stripLength), width, pleats.stripLength));
  if (pleats.trim > 0) add('trim', 'cut', level(pleats.stripLength - pleats.trim));
  for (const kind of ['valley', 'mountain'] as const) {
    add(
      `${kind} folds`,
      kind,
      pleats.folds.filter((fold) => fold.kind === kind).flatMap(({ at }) => level(at)),
    );
  }

  // Where two lengths join: the upper one is cut off there and laid on the lower one's line, so that diamonds close.
  const marks: { at: number; label: string; down: number }[] = [];
  if (index > 0) marks.push({ at: from, label: `${name(index - 1)}–${name(index)}`, down: -1.2 });
  if (index < count - 1) marks.push({ at: to - OVERLAP, label: `${name(index)}–${name(index + 1)}`, down: type.small });
  for (const { at, label, down } of marks) {
    const middle = x + width / 2;
    const path: Command[] = [...polyline({ x, y: y(at) }, { x: x + width, y: y(at) })];
    path.push(
      ...polyline(
        { x: middle - 3, y: y(at) },
        { x: middle, y: y(at) - 3 },
        { x: middle + 3, y: y(at) },
        { x: middle, y: y(at) + 3 },
      ),
      ['Z'],
    );
    shapes.push({ kind: 'path', name: `join ${label}`, role: 'dimension', path });
    shapes.push(line(`join ${label} text`, label, middle + 4, y(at) + down, type.small));
  }

  const size = type.small;
  const inside = (baseline: number) => baseline - size > window.y && baseline < window.y + window.height;
  const label = (what: string, text: string, baseline: number) => {
    if (inside(baseline)) shapes.push(line(what, text, x + 2, baseline, size));
  };
  pleats.folds.forEach(({ at, kind }, i) => {
    const distance = pleats.from === 'top' ? pleats.stripLength - at : at;
    const before = pleats.folds[i - 1]?.at ?? 0;
    // Above its line, or below where the next is too near.
    const next = pleats.folds[i + 1]?.at ?? pleats.stripLength;
    const above = next - at > 1.4 * size || at - before < 1.4 * size;
    label(`fold ${i + 1}`, `${i + 1} ${kind}: ${set(distance)}`, above ? y(at) - 1.2 : y(at) + size);
  });
  label('bottom', `bottom raw edge${pleats.from === 'bottom' ? ', 0' : ''}`, y(0) - 1.2);
  label('top', `top raw edge${pleats.from === 'top' ? ', 0' : ''}`, y(pleats.stripLength) + size + 1);
  if (pleats.trim > 0) label('trim words', 'trim here when folded', y(pleats.stripLength - pleats.trim) + size);
  if (count > 1) {
    const looks = { anchor: 'end', strong: true } as const;
    shapes.push(line('length name', name(index), x + width - 2, between(pleats, length, y, size), 2 * size, looks));
  }
  return shapes.map((shape) => ({ ...shape, name: `length ${name(index)} ${shape.name}` }));
}

/** A baseline near the middle of a length whose lettering of twice the small type lies on no fold. */
function between({ folds }: Pleated['pleats'], { from, to }: Length, y: (at: number) => number, size: number): number {
  const middle = (y(from) + y(to)) / 2;
  const room = (y(from) - y(to)) / 2 - 4 * size;
  for (let away = 0; away < room; away += 1) {
    for (const baseline of [middle + away, middle - away]) {
      if (folds.every(({ at }) => y(at) < baseline - 2.2 * size || y(at) > baseline + size)) return baseline;
    }
  }
  return middle;
}

function say({ label, pleats }: Pleated, pattern: Pattern): string[] {
  const { say } = lengthWriter(pattern);
  return [
    `Fold gauge of the ${label.toLowerCase()}, ${say(pleats.stripLength)} long.`,
    ...pleats.folds.map(({ at, kind }, i) => {
      const distance = pleats.from === 'top' ? pleats.stripLength - at : at;
      return `Fold ${i + 1}: a ${kind} fold, ${say(distance)} from the ${pleats.from} edge.`;
    }),
  ];
}
