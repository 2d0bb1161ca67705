import { boxOf } from '../cloth/size.ts';
import { faceOf, WorkLines } from './work-shapes.ts';
import { nameOf, plyWords } from './work-words.ts';
import { fitOf, LEAST, layOutSheet, roomBeside } from './sheet.ts';
import { LINE, tags } from './dimension.ts';
import { overlayOf } from '../cloth/faces.ts';
import { polyline } from './path.ts';
import { turnedUp } from './nap.ts';
import { clothWords, isDirectional } from './surface.ts';
import type { Command } from './path.ts';
import type { Frame } from './frame.ts';
import type { Ply, Work } from '../cloth/work.ts';
import type { Point } from '../geometry/index.ts';
import type { Scene, Shape } from './scene.ts';
import type { WorkSetting } from './work-words.ts';

/** Seen obliquely from above: depth runs up and to the right, by these shares of its length. */
const [LEAN, DEPTH] = [0.3, 0.5];
/** How far apart layers are drawn where there is room, as a share of their depth. */
const APART = 0.9;

/** Of more layers than this, interfacing is drawn in one with the cloth that it is fused to. */
const MANY = 12;

/** Plies that do not lie on each other, at one height in the stack. */
type Layer = { readonly plies: readonly Ply[]; readonly label: string };

/**
 * The stack taken apart: its layers lifted off each other, bottom to top, each named with the face that is up. Plies
 * that lie side by side, such as the hems of four edges, make one layer.
 */
export function drawExploded(work: Work, setting: WorkSetting): Scene {
  const all = layersOf(work, setting, false);
  const fused = all.length > MANY ? layersOf(work, setting, true) : all;
  const layers = fused.length < all.length ? fused : all;
  const box = boxOf(work.plies);
  const { width: whole, height } = fitOf(setting);
  const words = layers.map(({ label }, i) => ({ name: `layer ${i + 1}`, at: 0, number: String(i + 1), label }));
  // Where names beside the layers would make them small, only numbers stay there and the names go below.
  const terse = roomBeside([tags('layers', words)], setting) < 0.4 * whole;
  const labels = terse ? words.map((one) => ({ ...one, label: '' })) : words;
  const room = Math.max(LEAST, roomBeside([tags('layers', labels)], setting));
  const width = box.width + LEAN * box.height;
  // As large as the width allows, and lifted as far as the height then leaves; a label needs its line.
  const gaps = Math.max(1, layers.length - 1);
  const least = Math.min(gaps * LINE, 0.6 * height);
  const scale = Math.min(room / width, (height - least) / (DEPTH * box.height));
  const lift = Math.min((height - DEPTH * box.height * scale) / gaps, APART * DEPTH * box.height * scale) / scale;
  const lean = ({ x, y }: Point, i: number): Point => ({
    x: x - box.x + LEAN * (y - box.y),
    y: DEPTH * (y - box.y) + i * lift,
  });
  const points = layers.map((layer, i) => pointOf(layer, i, lean));
  const drawn = layers.flatMap(({ plies }, i) =>
    plies.flatMap(({ outline }) => outline.map(({ from }) => lean(from, i).y)),
  );
  const [low, high] = [Math.min(...drawn), Math.max(...drawn)];
  // Labels stand in the order of the layers, also where a layer lies to one side.
  const offset = points.reduce((sum, { y }, i) => sum + y - i * lift, 0) / Math.max(1, points.length);
  const at = (i: number) => offset + i * lift;
  const title = `${nameOf(work, setting.name)}, taken apart`;
  return layOutSheet(
    {
      title,
      lines: ['Layers from the bottom, each with the face that is up.'],
      cloth: { x: 0, y: low, width, height: high - low },
      right: [
        tags(
          'layers',
          labels.map((label, i) => ({ ...label, at: at(i) })),
        ),
      ],
      draw: (frame) => [
        ...layers.flatMap((layer, i) => layerShapes(layer, i, lean, frame, setting)),
        { kind: 'path', name: 'pointers', role: 'leader', path: pointers(points, at, frame) },
      ],
      ...(terse && { notes: keyOf(layers) }),
      words: { ...clothWords(setting.materials), 'raw edge': 'edge' },
      text: [
        `${title}: ${layers.length} layers, from the bottom to the top.`,
        ...layers.map(({ label }, i) => `Layer ${i + 1}: ${label}${/side$/.test(label) ? ' up' : ''}.`),
      ],
    },
    setting,
  );
}

/** The names of numbered layers, each once: 1, 3: cover, right side. */
function keyOf(layers: readonly Layer[]): string[] {
  const numbers = new Map<string, number[]>();
  layers.forEach(({ label }, i) => numbers.set(label, [...(numbers.get(label) ?? []), i + 1]));
  return [...numbers].map(([label, all]) => `${all.join(', ')}: ${label}`);
}

/** Where the label of a layer points: the middle of its right edge. */
function pointOf({ plies }: Layer, i: number, lean: Lean): Point {
  const corners = plies.flatMap(({ outline }) => outline.map(({ from }) => lean(from, i)));
  const heights = corners.map(({ y }) => y);
  return { x: Math.max(...corners.map(({ x }) => x)), y: (Math.min(...heights) + Math.max(...heights)) / 2 };
}

type Lean = (point: Point, layer: number) => Point;

/** Each ply one higher than the highest that it lies on; or as high as the cloth that it is fused to. */
function layersOf(work: Work, setting: WorkSetting, fused: boolean): Layer[] {
  const together = (ply: Ply) => fused && ply.fusedTo !== undefined && work.plies.some(({ id }) => id === ply.fusedTo);
  const below: Set<number>[] = work.plies.map(() => new Set());
  for (const covers of overlayOf(work.plies).covers) {
    const own = covers.filter((level) => !together(work.plies[level]!));
    for (let i = 1; i < own.length; i++) below[own[i]!]!.add(own[i - 1]!);
  }
  const heights: number[] = [];
  const layers: Ply[][] = [];
  for (const [i, ply] of work.plies.entries()) {
    if (together(ply)) continue;
    const height = Math.max(-1, ...[...below[i]!].map((one) => heights[one]!)) + 1;
    heights[i] = height;
    (layers[height] ??= []).push(ply);
  }
  // Interfacing lies under cloth whose right side is up, and on cloth whose wrong side is.
  for (const [i, ply] of work.plies.entries()) {
    if (!together(ply)) continue;
    const cloth = work.plies.findIndex(({ id }) => id === ply.fusedTo);
    const layer = layers[heights[cloth]!]!;
    if (i < cloth) layer.unshift(ply);
    else layer.push(ply);
  }
  return layers.map((plies) => ({ plies, label: namesIn(plies, together, setting) }));
}

/** cover, right side; facing, wrong side (with facing interfacing). */
function namesIn(plies: readonly Ply[], fused: (ply: Ply) => boolean, setting: WorkSetting): string {
  const names = (some: readonly Ply[], name: (ply: Ply) => string) => [...new Set(some.map(name))];
  const cloth = names(
    plies.filter((ply) => !fused(ply)),
    (ply) => plyWords(ply, setting),
  ).join('; ');
  const stay = names(plies.filter(fused), ({ piece }) => piece);
  return stay.length === 0 ? cloth : `${cloth} (with ${stay.join(', ')})`;
}

function layerShapes(layer: Layer, i: number, lean: Lean, frame: Frame, { materials }: WorkSetting): Shape[] {
  const { plies } = layer;
  const lines = new WorkLines();
  for (const ply of plies) {
    const ring = ply.outline.map(({ from }) => frame.onto(lean(from, i)));
    const role = faceOf(ply, ply.face, materials);
    const turn = isDirectional(role) ? turnedUp(ply.transform, 'front') : 0;
    lines.add(role, [...polyline(...ring), ['Z']], turn === 0 ? {} : { turn });
  }
  for (const { outline } of plies) {
    for (const [k, { fold, from }] of outline.entries()) {
      const to = outline[(k + 1) % outline.length]!.from;
      const path = polyline(frame.onto(lean(from, i)), frame.onto(lean(to, i)));
      lines.add(fold === undefined ? 'raw edge' : 'fold edge', path);
    }
  }
  return lines.shapes(`layer ${i + 1}`);
}

/** From the right side of each layer to its label. */
const pointers = (points: readonly Point[], label: (layer: number) => number, frame: Frame): Command[] =>
  points.flatMap((point, i) => {
    const { x, y } = frame.onto(point);
    return polyline({ x: x + 0.5, y }, { x: frame.right + 0.5, y: frame.y(label(i)) });
  });
