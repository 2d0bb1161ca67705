/**
 * How long the three drawings of the pleat study take to make, with the project worked out anew each time, as when a
 * slider moves: the folio, in turn in both editions and for a phone and a wide screen.
 *
 *     node tests/bench/drawing.ts
 */
import { readFile } from 'node:fs/promises';
import { parse } from 'yaml';
import {
  drawPleatedFront,
  drawPleatSection,
  drawStrip,
  isPleated,
  MaterialsFile,
  NARROWEST,
  ProjectFile,
  resolveProject,
} from '../../src/core/index.ts';

const RUNS = 2000;

const read = async (path: string): Promise<unknown> =>
  parse(await readFile(new URL(`../../content/${path}`, import.meta.url), 'utf8'));
const file = ProjectFile.parse(await read('projects/swatch-folio/project.yaml'));
const materials = MaterialsFile.parse(await read('materials.yaml'));

const whole: number[] = [];
const drawings = [drawStrip, drawPleatedFront, drawPleatSection].map((draw) => ({ draw, times: [] as number[] }));
for (let run = 0; run < RUNS; run++) {
  const edition = run % 2 === 0 ? 'inch' : 'metric';
  const depth = edition === 'inch' ? 25.4 * (2 + (run % 4) / 8) : 50 + (run % 7);
  const fit = { width: run % 3 === 0 ? NARROWEST : 2 * NARROWEST };
  const start = performance.now();
  const pattern = resolveProject(file, { edition, values: { depth }, materials });
  const strip = pattern.pieces['pocket strip'];
  if (!strip || !isPleated(strip)) throw new Error('The folio has lost its pleats.');
  for (const { draw, times } of drawings) {
    const began = performance.now();
    const scene = draw(strip, { ...pattern, fit, folds: run % (strip.pleats.folds.length + 1) });
    if (scene.shapes.length < 10) throw new Error(`${scene.title} is empty.`);
    times.push(performance.now() - began);
  }
  whole.push(performance.now() - start);
}

const first = whole[0]!;
const at = (times: number[], share: number): string =>
  times.toSorted((a, b) => a - b)[Math.floor(share * (times.length - 1))]!.toFixed(3);
for (const { draw, times } of drawings) {
  console.log(`${draw.name}: median ${at(times, 0.5)} ms, 95 % under ${at(times, 0.95)} ms`);
}
console.log(
  `A slider step without the page: first ${first.toFixed(1)} ms, then median ${at(whole, 0.5)} ms, 95 % under ${at(whole, 0.95)} ms`,
);
