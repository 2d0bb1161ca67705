import { across, heights, lettering, margin, tags, TYPE } from './dimension.ts';
import { boxOf } from '../cloth/size.ts';
import { box, curves, polyline } from './path.ts';
import { countLayers, layersInWords } from '../cloth/layers.ts';
import { layerMap, middleOf, thickest } from '../cloth/layer-map.ts';
import { layOutSheet } from './sheet.ts';
import { letteringWidth } from './lettering.ts';
import { WorkLines, ringsPath } from './work-shapes.ts';
import { nameOf } from './work-words.ts';
import { overlayOf, patchesBy } from '../cloth/faces.ts';
import { thicknessIn, thin } from './thickness.ts';
import { lengthWriter } from './lengths.ts';
import type { Command } from './path.ts';
import type { Frame } from './frame.ts';
import type { Patch } from '../cloth/faces.ts';
import type { Point } from '../geometry/index.ts';
import type { Scene, Shape, ShapeRole } from './scene.ts';
import type { ThicknessOf } from '../cloth/layers.ts';
import type { Work } from '../cloth/work.ts';
import type { WorkSetting } from './work-words.ts';

export type LayerMapSetting = WorkSetting & {
  /** Thickness of one layer of a material in mm; left out, as the shelf of materials has it. */
  thickness?: ThicknessOf;
};

const TONES = ['layers 1', 'layers 2', 'layers 3', 'layers 4', 'layers 5'] as const;

/** Regions of so many layers, lying in one piece, from the largest. */
type Counted = { readonly count: number; readonly patch: Patch };

/**
 * How many layers lie where: regions in tones that grow darker with their number, the number written where it has
 * room, and the thickest place marked.
 */
export function drawLayerMap(work: Work, setting: LayerMapSetting): Scene {
  const { set, say } = lengthWriter(setting);
  const { thickness = thicknessIn(setting) } = setting;
  const around = boxOf(work.plies);
  const found = patchesBy(overlayOf(work.plies), (covers) => covers.length)
    .map(({ kind, patch }): Counted => ({ count: kind, patch }))
    .sort((a, b) => b.patch.area - a.patch.area);
  const counts = [...new Set(found.map(({ count }) => count))].sort((a, b) => a - b);
  const worst = thickest(layerMap(work), thickness);
  const place = worst && {
    ...middleOf(worst.region),
    layers: layersInWords(countLayers(worst.region.plies)),
    thick: thin(worst.thickness),
  };
  const words = new Map<ShapeRole, string>();
  const bands = TONES.map((_, i) => counts.filter((count) => toneOf(count, counts) === i));
  bands.forEach((band, i) => {
    if (band.length > 0) words.set(TONES[i]!, `${countWords(band)}`);
  });
  const title = `${nameOf(work, setting.name)}, layers`;
  return layOutSheet(
    {
      title,
      lines: ['Numbers: how many layers lie on each other.'],
      cloth: around,
      left: [heights({ name: 'height', marks: [around.y, around.y + around.height], labels: [set(around.height)] })],
      right: place
        ? [tags('thickest', [{ name: 'thickest', at: place.at.y, label: place.thick, now: true }])]
        : [margin],
      below: [across({ name: 'width', marks: [around.x, around.x + around.width], labels: [set(around.width)] })],
      draw: (frame) => [
        ...tones(found, counts, frame),
        ...(place ? mark(place.at, frame) : []),
        ...numbers(found, place?.at, frame),
      ],
      ...(place && { now: { role: 'leader', words: `thickest place: ${place.layers}, ${place.thick}` } }),
      words: Object.fromEntries(words),
      text: [
        `${title}: ${say(around.width)} wide and ${say(around.height)} high.`,
        ...areas(found, counts),
        ...(place
          ? [
              `The thickest place has ${place.layers}, ${thin(worst.thickness, ' millimetres')}.`,
              `It is ${say(place.at.x - around.x)} from the left edge and ${say(place.at.y - around.y)} from the bottom.`,
            ]
          : []),
      ],
    },
    setting,
  );
}

/** The same places may have interfacing or not, so it is not told of a count. */
const layersWords = (count: number): string => layersInWords({ layers: count, fused: 0 });

/** 2 layers; 5, 6 layers; 7 to 10 layers. */
function countWords(band: readonly number[]): string {
  const [first, last] = [band[0]!, band.at(-1)!];
  return first === last ? layersWords(first) : `${first} to ${last} layers`;
}

/** Few counts have a tone each, spread from light to dark; of many, neighbours share one. */
function toneOf(count: number, counts: readonly number[]): number {
  const rank = counts.indexOf(count);
  if (counts.length <= TONES.length) return rank;
  return Math.floor((rank * TONES.length) / counts.length);
}

function tones(found: readonly Counted[], counts: readonly number[], frame: Frame): Shape[] {
  const lines = new WorkLines();
  for (const { count, patch } of found) lines.add(TONES[toneOf(count, counts)]!, ringsPath(patch.rings, frame.onto));
  for (const { patch } of found) lines.add('leader', ringsPath(patch.rings, frame.onto));
  return lines.shapes('layers');
}

/** A ring round the thickest place and the line from there to its label. */
function mark(at: Point, frame: Frame): Shape[] {
  const { x, y } = frame.onto(at);
  const path = [
    ['M', x + RING, y] as const,
    ...curves({ x, y }, RING, 0, 2 * Math.PI, (point) => point),
    ...polyline({ x: x + RING, y }, { x: frame.right + 0.4, y }),
  ];
  return [{ kind: 'path', name: 'thickest mark', role: 'leader', path, now: true }];
}

const RING = 1.6;

/** The numbers that have room in their regions, on plates that keep the patterns off them. */
function numbers(found: readonly Counted[], worst: Point | undefined, frame: Frame): Shape[] {
  const plates: Command[] = [];
  const texts: Shape[] = [];
  const pin = worst && frame.onto(worst);
  found.forEach(({ count, patch }, i) => {
    const { at, room } = middleOf(patch);
    const text = String(count);
    const { x, y } = frame.onto(at);
    const [wide, high] = [letteringWidth(text, TYPE) / 2 + 0.5, TYPE / 2 + 0.3];
    if (room * frame.scale < Math.max(wide, high)) return;
    // Where the line to the thickest place runs, the key will do.
    if (pin && Math.abs(pin.y - y) < high + RING && x + wide > pin.x - RING) return;
    plates.push(...box(x - wide, y - high, 2 * wide, 2 * high));
    const number = lettering(`region ${i + 1} number`, text, x, y, 1);
    texts.push({ ...number, anchor: 'middle', strong: true });
  });
  if (plates.length > 0) texts.unshift({ kind: 'path', name: 'plates', role: 'plate', path: plates });
  return texts;
}

/** How much of the work has how many layers, in whole hundredths. */
function areas(found: readonly Counted[], counts: readonly number[]): string[] {
  const all = found.reduce((sum, { patch }) => sum + patch.area, 0);
  return counts.map((count) => {
    const here = found.filter((one) => one.count === count).reduce((sum, { patch }) => sum + patch.area, 0);
    const share = Math.round((100 * here) / all);
    return `${layersWords(count)}: ${share === 0 ? 'less than 1' : share} % of it.`;
  });
}
