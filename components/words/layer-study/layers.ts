/** How many layers of what lie where. */
import {
  drawExploded,
  drawLayerMap,
  drawWorkSection,
  type Pattern,
  type Scene,
  type Step,
} from '../../../src/core/index.ts';
import {
  layerMap,
  middleOf,
  size,
  stitchLines,
  type Region,
  type StitchStretch,
  type Work,
} from '../../../src/core/cloth/index.ts';
import { low } from '../../compute/fit.ts';
import { isIn, type DrawnLayers } from './layers-on-sheet.ts';

type Point = { x: number; y: number };

/** A part of a work where the same stack lies everywhere. Lengths in mm. */
export type LayerPlace = {
  /** From 1: those that are sewn first, and of these the one of most layers. */
  n: number;
  /** A point of it, from the left and from the bottom of the work. */
  at: { x: number; y: number };
  /** Its layers, from the bottom up where they lie so everywhere: of which piece, of what, and how full. */
  stack: { piece: string; material: string; fullness: number }[];
  /** Its share of the work's area, 0 to 1. */
  share: number;
  /** Whether a row of this step goes through it. */
  sewn: boolean;
};

/** A place with the regions that are it: the same stack may lie at both sides of a work. */
export type PlaceWithRegions = LayerPlace & { regions: Region[] };

/** It saves time alone. Two steps may leave one work: pressing a seam changes nothing of it, and sews no row. */
const known = new WeakMap<Sewn, PlaceWithRegions[]>();

type Sewn = Pick<Step, 'after' | 'stitches'>;

/**
 * The places of a work after a step, each of the same layers everywhere, in whatever order they lie. Those that the
 * step sews through come first, and of these the one of most layers.
 */
export function placesOf(step: Sewn): PlaceWithRegions[] {
  let places = known.get(step);
  if (!places) known.set(step, (places = readPlaces(step.after, new Set(step.stitches.map(({ id }) => id)))));
  return places;
}

function readPlaces(work: Work, sewn: ReadonlySet<number>): PlaceWithRegions[] {
  const regions = layerMap(work);
  const all = regions.reduce((sum, region) => sum + region.area, 0);
  const stacks = Map.groupBy(regions, ({ plies }) =>
    plies
      .map(({ piece, material, fullness }) => `${piece}/${material}/${fullness}`)
      .sort()
      .join(' '),
  );
  const corner = cornerOf(work);
  const rows = stitchLines(work).filter(({ id }) => sewn.has(id));
  const pierced = new Set(rows.flatMap(({ stretches }) => stretches.flatMap((one) => piercedBy(one, regions) ?? [])));
  return [...stacks.values()]
    .map((regions): Omit<PlaceWithRegions, 'n'> => {
      const middles = regions.map(middleOf);
      const { at } = middles.reduce((best, one) => (one.room > best.room ? one : best));
      return {
        at: { x: at.x - corner.x, y: at.y - corner.y },
        stack: regions[0]!.plies.map(({ piece, material, fullness }) => ({ piece, material, fullness })),
        share: regions.reduce((sum, region) => sum + region.area, 0) / all,
        sewn: regions.some((region) => pierced.has(region)),
        regions,
      };
    })
    .sort((a, b) => Number(b.sewn) - Number(a.sewn) || b.stack.length - a.stack.length || b.share - a.share)
    .map((place, i) => ({ ...place, n: i + 1 }));
}

/** A row often runs along the edge of a region: interfacing ends at the stitch line. */
const ASIDE = 0.3;

/** The region that a stretch of a row goes through: of those at its two sides, the one that has its layers. */
function piercedBy({ from, to, plies }: StitchStretch, regions: readonly Region[]): Region | undefined {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return undefined;
  const [x, y] = [(from.x + to.x) / 2, (from.y + to.y) / 2];
  const [dx, dy] = [(-(to.y - from.y) / length) * ASIDE, ((to.x - from.x) / length) * ASIDE];
  const beside = [1, -1].flatMap(
    (side) => regions.find((one) => isIn(one.rings, { x: x + side * dx, y: y + side * dy })) ?? [],
  );
  const off = (region: Region) => Math.abs(region.plies.length - plies.length);
  return beside.sort((a, b) => off(a) - off(b))[0];
}

/** The lower left corner of the box round a work. */
function cornerOf({ plies }: Work): Point {
  const points = plies.flatMap((ply) => ply.outline.map((edge) => edge.from));
  return { x: Math.min(...points.map(({ x }) => x)), y: Math.min(...points.map(({ y }) => y)) };
}

/**
 * Draws the layers of a work after a step.
 *
 * @param thickness of one layer of a material, in mm
 */
export function drawLayers(step: Step, pattern: Pattern, thickness: (material: string) => number): DrawnLayers {
  const places = placesOf(step);
  const scene = drawLayerMap(step.after, { ...pattern, fit: low(80), thickness, name: step.makes });
  const corner = cornerOf(step.after);
  const sheet = sheetCornerOf(scene);
  const { height } = size(step.after);
  const onto = ({ x, y }: Point): Point => ({
    x: sheet.x + (x - corner.x) * scene.scale,
    y: sheet.y + (height - (y - corner.y)) * scene.scale,
  });
  return {
    scene,
    places: places.map(({ n, regions }) => ({
      n,
      rings: regions.flatMap(({ rings }) => rings.map((ring) => ring.map(onto))),
    })),
  };
}

/** Where the work lies on the sheet: the upper left corner of its tones. */
function sheetCornerOf({ shapes }: Scene): Point {
  const points = shapes.flatMap((shape) =>
    shape.kind === 'path' && shape.name.startsWith('layers ')
      ? shape.path.flatMap((command) =>
          command[0] === 'M' || command[0] === 'L' ? [{ x: command[1], y: command[2] }] : [],
        )
      : [],
  );
  return { x: Math.min(...points.map(({ x }) => x)), y: Math.min(...points.map(({ y }) => y)) };
}

/**
 * The work after a step cut through at a place, from its lower edge up, and seen from the side.
 *
 * @param thickness of one layer of a material, in mm
 */
export function drawCut(step: Step, pattern: Pattern, n: number, thickness: (material: string) => number): Scene {
  const places = placesOf(step);
  const corner = cornerOf(step.after);
  const { x = 0, y = 0 } = (places.find((place) => place.n === n) ?? places[0])?.at ?? {};
  const materials = Object.fromEntries(
    Object.entries(pattern.materials).map(([role, used]) => {
      const { material } = used;
      return [role, material ? { ...used, material: { ...material, thickness: thickness(role) } } : used];
    }),
  );
  const line = { at: { x: corner.x + x, y: corner.y + y }, angle: 90 };
  return drawWorkSection(step.after, line, { ...pattern, materials, fit: low(80), name: step.makes });
}

/** The layers of the work after a step, lifted off each other. */
export const drawApart = ({ after, makes }: Step, pattern: Pattern): Scene =>
  drawExploded(after, { ...pattern, fit: low(110), name: makes });
