import { boxOf } from '../cloth/size.ts';
import { across, margin, tags } from './dimension.ts';
import { fitOf, LEAST, layOutSheet, roomBeside } from './sheet.ts';
import { curves, polyline } from './path.ts';
import { hasNoSides, surfaceOf } from './surface.ts';
import { WorkLines } from './work-shapes.ts';
import { nameOf, plyWords } from './work-words.ts';
import { countLayers, layersInWords } from '../cloth/layers.ts';
import { section } from '../cloth/section.ts';
import { thicknessIn, thin } from './thickness.ts';
import { lengthWriter } from './lengths.ts';
import { between } from '../geometry/point.ts';
import { alongLine, leftOf } from '../geometry/index.ts';
import type { Command, Onto } from './path.ts';
import type { Frame } from './frame.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Scene, Shape } from './scene.ts';
import type { Section, SectionColumn } from '../cloth/section.ts';
import type { Ply, Work } from '../cloth/work.ts';
import type { WorkSetting } from './work-words.ts';

/** As thick as a layer of cloth is drawn where there is room, and the whole stack at most; mm of the sheet. */
const [THICK, STACK] = [2.2, 26];
/** How far a fold bends round and a layer slopes down a step, mm of the sheet. */
const BEND = 1.5;
/** No cut is shown in less than this, in mm of cloth. */
const LEAST_CUT = 12;
/** More names than this have no room beside a cut. */
const NAMES = 6;

/**
 * Work in progress cut through along a line and seen from the side, the side that is up at the top. Lengths along the
 * line are to scale; layers are drawn thicker than they are, and the drawing says by how much.
 */
export function drawWorkSection(work: Work, line: Line, setting: WorkSetting): Scene {
  const { set, say } = lengthWriter(setting);
  const cut = section(work, line, thicknessIn(setting));
  const [from, to] = [cut.columns[0]?.from ?? 0, cut.columns.at(-1)?.to ?? 0];
  const thickest = cut.columns.reduce<SectionColumn | undefined>(
    (best, one) => (best === undefined || one.thickness > best.thickness + 1e-9 ? one : best),
    undefined,
  );
  const counts = cut.columns.map(({ layers }) => countLayers(layers.map(({ layer }) => cut.layers[layer]!.ply)));
  const most = counts.reduce((a, b) => (b.layers > a.layers ? b : a), { layers: 0, fused: 0 });
  const named = thickest ? namesOf(cut, thickest, setting) : [];
  const labels = named.map(({ label }, i) => ({ name: `part ${i + 1}`, at: 0, label }));
  // Where names beside the cut would make it small, they go below.
  const terse = named.length > NAMES || roomBeside([tags('parts', labels)], setting) < 0.5 * fitOf(setting).width;
  const beside = terse ? [] : named;
  const room = Math.max(LEAST, roomBeside([margin, tags('parts', terse ? [] : labels)], setting));
  const around = boxOf(work.plies);
  // A short cut is not blown up: it is drawn in the middle of some table.
  const length = Math.max(to - from, 0.2 * Math.max(around.width, around.height), LEAST_CUT);
  const scale = Math.min(room / length, fitOf(setting).height / (0.1 * length));
  const thick = thickest?.thickness ?? 0;
  const layer = most.layers === 0 ? 1 : Math.max(thick / most.layers, 1e-6);
  const factor = Math.max(1, Math.floor(Math.min(THICK / layer, STACK / Math.max(thick, 1e-6)) / scale));
  const height = Math.max(thick * factor, 1e-6);
  const title = `${nameOf(work, setting.name)}, cut through`;
  const at = (column: SectionColumn) => (column.from + column.to) / 2;
  return layOutSheet(
    {
      title,
      lines: ['Seen from the side, the side that is up at the top.'],
      cloth: { x: (from + to - length) / 2, y: 0, width: length, height },
      left: [margin],
      right: [
        tags(
          'parts',
          beside.map(({ at }, i) => ({ ...labels[i]!, at: at * factor })),
        ),
      ],
      below: [across({ name: 'length', marks: [from, to], labels: [most.layers === 0 ? '' : set(to - from)] }, 0)],
      draw: (frame) => [
        ...layerShapes(cut, factor, frame, setting),
        ...stitchShapes(work, line, cut, factor, frame),
        ...(thickest
          ? pointers(
              beside.map((one) => one.at * factor),
              at(thickest),
              frame,
            )
          : []),
      ],
      notes: [
        `Thickness × ${factor}.`,
        `At most ${layersInWords(most)}: ${thin(thick)}, pressed flat.`,
        ...(terse ? [`There, from the top: ${named.map(({ label }) => label).join('; ')}.`] : []),
      ],
      words: { face: 'right side of the cloth', stitch: 'row of stitches' },
      text: [
        `${title} and seen from the side, with the side that is up at the top.`,
        most.layers === 0 ? 'The line misses the cloth.' : `The cut is ${say(to - from)} long.`,
        `Layers are drawn ${factor} times as thick as they are.`,
        `At its thickest ${layersInWords(most)}${most.fused > 0 ? ',' : ''} lie on each other: ${thin(thick, ' millimetres')}, pressed flat.`,
        ...(named.length > 0 ? [`There, from the top: ${named.map(({ label }) => label).join('; ')}.`] : []),
      ],
    },
    setting,
  );
}

/** The layers of a column from the top, those of one piece and material that follow each other named together. */
function namesOf(cut: Section, column: SectionColumn, setting: WorkSetting): { label: string; at: number }[] {
  const found: { ply: Ply; count: number; bottom: number; top: number }[] = [];
  for (const { layer, bottom, top } of column.layers.toReversed()) {
    const { ply } = cut.layers[layer]!;
    const last = found.at(-1);
    if (last?.ply.piece === ply.piece) Object.assign(last, { count: last.count + 1, bottom });
    else found.push({ ply, count: 1, bottom, top });
  }
  return found.map(({ ply, count, bottom, top }) => ({
    label: count === 1 ? plyWords(ply, setting) : `${ply.piece}, ${count} layers`,
    at: (bottom + top) / 2,
  }));
}

/** Each layer as a band that steps up and down over what lies below it, and folds bending round between two layers. */
function layerShapes(cut: Section, factor: number, frame: Frame, { materials }: WorkSetting): Shape[] {
  const lines = new WorkLines();
  const bends = cut.turns.filter(({ turns }) => turns !== 'goes on');
  const bands = cut.layers.map((_, i) => bandOf(cut, i, bends, factor, BEND / frame.scale));
  const surface = (layer: number) => surfaceOf(cut.layers[layer]!.ply, materials);
  const isCloth = (layer: number) => !hasNoSides(surface(layer));
  bands.forEach(({ top, bottom }, i) => {
    const path: Command[] = [...polyline(...[...top, ...bottom.toReversed()].map(frame.onto)), ['Z']];
    lines.add(isCloth(i) ? 'layer' : surface(i), path);
    if (!isCloth(i)) lines.add('leader', path);
  });
  for (const { at, lower, upper, turns } of bends) {
    if (!isCloth(lower)) continue;
    const end = turns === 'ends' ? -1 : 0;
    const [low, high] = [bands[lower]!, bands[upper]!];
    const outer = bend(at, low.bottom.at(end)!, high.top.at(end)!, 0, frame.onto);
    const within = Math.min(BEND / 2, (low.top.at(end)!.y - low.bottom.at(end)!.y) * frame.scale);
    const inner = bend(at, low.top.at(end)!, high.bottom.at(end)!, within, frame.onto);
    lines.add('layer', [...outer.path, ...lineTo(inner.end), ...inner.back, ['Z']]);
    // Upward in the stack: of a layer whose right side is up, the lower side, which turns outward, is its wrong side.
    lines.add('face', cut.layers[lower]!.ply.face === 'wrong' ? outer.path : inner.path);
  }
  bands.forEach(({ top, bottom }, i) => {
    if (isCloth(i))
      lines.add('face', polyline(...(cut.layers[i]!.ply.face === 'right' ? top : bottom).map(frame.onto)));
  });
  return lines.shapes('section');
}

const lineTo = ({ x, y }: Point): Command[] => [['L', x, y]];

/** Half an ellipse from a lower to an upper point, which comes as far as the fold, less `within` mm of the sheet. */
function bend(at: number, from: Point, to: Point, within: number, onto: Onto) {
  const [a, b] = [onto(from), onto(to)];
  const middle = { x: a.x, y: (a.y + b.y) / 2 };
  const reach = onto({ x: at, y: 0 }).x - a.x;
  const wide = reach - Math.sign(reach) * Math.min(within, Math.abs(reach) / 2);
  const high = (a.y - b.y) / 2;
  const about: Onto = (p) => ({ x: middle.x + wide * p.x, y: middle.y - high * p.y });
  const up = curves({ x: 0, y: 0 }, 1, -Math.PI / 2, Math.PI, about);
  const path: Command[] = [['M', a.x, a.y], ...up];
  return { path, end: b, back: curves({ x: 0, y: 0 }, 1, Math.PI / 2, -Math.PI, about) };
}

/** The upper and the lower side of a layer along the cut, from left to right; a fold takes its bend off the end. */
function bandOf(cut: Section, layer: number, bends: Section['turns'], factor: number, reach: number) {
  const { from, to } = cut.layers[layer]!;
  const bent = (turns: 'begins' | 'ends') =>
    bends.some((one) => one.turns === turns && (one.lower === layer || one.upper === layer));
  const [top, bottom]: [Point[], Point[]] = [[], []];
  for (const column of cut.columns) {
    const here = column.layers.find((one) => one.layer === layer);
    if (!here) continue;
    const ease = Math.min((column.to - column.from) / 3, reach);
    const first = column.from > from.at + 1e-6 || bent('begins') ? column.from + ease : column.from;
    const last = column.to < to.at - 1e-6 || bent('ends') ? column.to - ease : column.to;
    for (const x of [first, last]) {
      top.push({ x, y: here.top * factor });
      bottom.push({ x, y: here.bottom * factor });
    }
  }
  return { top, bottom };
}

/** Rows of stitches that the cut crosses, through the plies that they hold. */
function stitchShapes(work: Work, line: Line, cut: Section, factor: number, frame: Frame): Shape[] {
  const path: Command[] = [];
  for (const { runs } of work.stitches) {
    for (const { from, to, plies } of runs) {
      const [a, b] = [leftOf(line, from), leftOf(line, to)];
      if (a > 0 === b > 0) continue;
      const x = alongLine(line, between(from, to, a / (a - b)));
      const column = cut.columns.find((one) => x >= one.from - 1e-6 && x <= one.to + 1e-6);
      const sewn = column?.layers.filter(({ layer }) => plies.includes(cut.layers[layer]!.ply.id)) ?? [];
      const [low, high] = [sewn[0], sewn.at(-1)];
      if (!low || !high) continue;
      path.push(...polyline(frame.onto({ x, y: low.bottom * factor }), frame.onto({ x, y: high.top * factor })));
    }
  }
  return path.length === 0 ? [] : [{ kind: 'path', name: 'rows', role: 'stitch', path, now: false }];
}

/** From each name to its layers in the thickest place. */
function pointers(at: readonly number[], x: number, frame: Frame): Shape[] {
  const path = at.flatMap((height): Command[] => {
    const from = frame.onto({ x, y: height });
    return [
      ...polyline(from, { x: frame.right + 0.4, y: from.y }),
      ['M', from.x + 0.5, from.y],
      ...curves(from, 0.5, 0, 2 * Math.PI, (p) => p),
    ];
  });
  return path.length === 0 ? [] : [{ kind: 'path', name: 'pointers', role: 'leader', path }];
}
