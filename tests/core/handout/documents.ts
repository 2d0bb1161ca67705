/** The demo course's documents, and patterns with pieces that no course would have. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { printFonts } from '../../../src/site/print/fonts.ts';
import { everything, plannedHandouts } from '../../../src/site/print/handouts.ts';
import { readContent } from '../../../src/site/content/read-content.ts';
import { bounds, polygon, resolveProject, writePdf } from '../../../src/core/index.ts';
import type {
  Edition,
  Handout,
  Outline,
  PaperName,
  Pattern,
  Piece,
  Point,
  ProjectFile,
} from '../../../src/core/index.ts';
import { pieceOf } from '../drawing/pieces.ts';

export const root = fileURLToPath(new URL('../../..', import.meta.url));
export const content = readContent(root);
export const fonts = await printFonts(path.join(root, '.cache/fonts'));

/** A project of the demo content, by the name of its folder. */
export function projectNamed(id: string): ProjectFile {
  const project = content.projects.find((entry) => entry.id === id)?.value;
  if (!project) throw new Error(`The demo content has no sound project ${id}.`);
  return project;
}

/** The demo project with a pleated strip, a flap with round corners and pieces of four materials. */
export const demoPattern = (edition: Edition): Pattern =>
  resolveProject(projectNamed('swatch-folio'), { edition, materials: content.materials.value ?? {} });

export const courses = content.courses.map(({ id }) => id);

const made = new Map<string, Handout[]>();

/** Every document of a demo course on one paper in one edition, made once. */
export function courseHandouts(course: string, paper: PaperName, edition: Edition, largePrint = false): Handout[] {
  const key = `${course} ${paper} ${edition} ${largePrint}`;
  const all = made.get(key) ?? makeHandouts(course, paper, edition, largePrint);
  made.set(key, all);
  return all;
}

/** The documents of all demo courses. */
export const demoHandouts = (paper: PaperName, edition: Edition, largePrint = false): Handout[] =>
  courses.flatMap((course) => courseHandouts(course, paper, edition, largePrint));

/** The documents of a course, made anew. */
export const makeHandouts = (course: string, paper: PaperName, edition: Edition, largePrint = false): Handout[] =>
  plannedHandouts(content, course, { ...everything, papers: [paper], editions: [edition], largePrint }).flatMap(
    (planned) => (planned.kind === 'document' ? [planned.make()] : []),
  );

/** A pattern with pieces of one's own in place of the demo's. */
export const patternOf = (pieces: readonly Piece[], edition: Edition = 'metric', title = 'Odd pieces'): Pattern => ({
  ...demoPattern(edition),
  title,
  pieces: Object.fromEntries(pieces.map((piece) => [piece.name, piece])),
});

/** A piece whose cut line is a polygon, without allowance. */
export function cutPiece(points: readonly Point[], more: Partial<Piece> = {}): Piece {
  return outlined(polygon(points), more);
}

export function outlined(outline: Outline, more: Partial<Piece> = {}): Piece {
  const none = Object.fromEntries(outline.map(({ name }) => [name, 0]));
  const { width, height } = bounds(outline);
  return pieceOf(outline, none, { size: { width, height }, grain: 'any', ...more });
}

/** A folder that is gone when the tests are done. */
export function folder(): { path: string; remove: () => void } {
  const made = mkdtempSync(path.join(tmpdir(), 'handouts-'));
  return { path: made, remove: () => rmSync(made, { recursive: true, force: true }) };
}

let written = 0;

/** Writes a document and gives its file. */
export async function printed(handout: Handout, where: string): Promise<string> {
  const file = path.join(where, `${++written}-${handout.name}.pdf`);
  writeFileSync(file, (await writePdf(handout, fonts)).bytes);
  return file;
}
