import { LINE, lettering, TYPE } from './dimension.ts';
import { letteringWidth, wrap } from './lettering.ts';
import { breakLine, grainArrow, hardwareRing, notchWedge, zigzag } from './marks.ts';
import { box, polyline } from './path.ts';
import { pens } from './pens.ts';
import type { Command } from './path.ts';
import type { Scene, Shape, ShapeRole } from './scene.ts';

/** What a drawing says about its legend. */
export type LegendWords = {
  /** Words that differ from the pen's own. */
  readonly words?: Partial<Record<ShapeRole, string>>;
  /** Roles that are explained even where the drawing, just now, does not show them; so that it holds still. */
  readonly legend?: readonly ShapeRole[];
  /** What the thread's colour marks. */
  readonly now?: NowWords | readonly NowWords[];
};

type NowWords = { readonly role: ShapeRole; readonly words: string };

/** What the thread's colour says of a line, by its role. */
export const nowWords: Partial<Record<ShapeRole, string>> = {
  valley: 'folded in this step',
  mountain: 'folded in this step',
  stitch: 'sewn in this step',
  basting: 'sewn in this step',
  zigzag: 'sewn in this step',
  'hand stitch': 'sewn in this step',
  cut: 'cut in this step',
  hardware: 'set in this step',
};

/**
 * One legend for several drawings: every line and surface that any of them shows, once.
 *
 * @param width in mm of the sheet
 */
export function drawLegend(
  drawings: readonly Pick<Scene, 'shapes'>[],
  words: Partial<Record<ShapeRole, string>>,
  width: number,
): Scene {
  const drawn = drawings.flatMap(({ shapes }) => shapes);
  const marked = new Map<string, ShapeRole>();
  for (const shape of drawn) {
    const says = shape.kind === 'path' && shape.now ? nowWords[shape.role] : undefined;
    if (says !== undefined && shape.kind === 'path' && !marked.has(says)) marked.set(says, shape.role);
  }
  const now = [...marked].map(([says, role]) => ({ role, words: says }));
  const { shapes, bottom } = legendOf(drawn, { words, now }, width, 0);
  return { title: 'What lines and surfaces mean', width, height: bottom, scale: 1, shapes, text: [] };
}

const SWATCH = { width: 7.5, height: 3.4 };
/** Between a sample and its words, and from there to the next sample. */
const [NEAR, FAR] = [1.4, 3.4];

/**
 * A sample and its words for every role among the shapes that has words, as many beside each other as fit the width.
 * Nobody has to remember to explain a line: one that is drawn is in the legend.
 *
 * @param from where the legend begins, mm from the top of the sheet
 */
export function legendOf(
  drawn: readonly Shape[],
  { words = {}, legend = [], now = [] }: LegendWords,
  width: number,
  from: number,
): { shapes: Shape[]; bottom: number } {
  const used = new Set(legend);
  for (const shape of drawn) if (shape.kind === 'path' && !shape.now) used.add(shape.role);
  const entries = (Object.keys(pens) as ShapeRole[]).flatMap((role) => {
    const text = words[role] ?? pens[role].legend;
    return used.has(role) && text !== undefined ? [{ name: `legend ${role}`, role, text, now: false }] : [];
  });
  const marked = [now].flat().map(({ role, words }, i) => ({
    name: i === 0 ? 'legend now' : `legend now ${i + 1}`,
    role,
    text: words,
    now: true,
  }));

  const shapes: Shape[] = [];
  const frames: Command[] = [];
  const indent = SWATCH.width + NEAR;
  let [x, y] = [0, from];
  for (const { name, role, text, now } of [...marked, ...entries]) {
    const rows = wrap(text, TYPE, width - indent);
    const needed = indent + Math.max(...rows.map((row) => letteringWidth(row, TYPE)));
    if (x > 0 && x + needed > width) [x, y] = [0, y + LINE * 1.15];
    const middle = y + LINE / 2;
    shapes.push({ kind: 'path', name, role, path: sample(role, x, middle), ...(now && { now }) });
    if (pens[role].fill && role !== 'hardware') frames.push(...swatch(x, middle));
    rows.forEach((row, i) => {
      shapes.push(lettering(`${name} text ${i + 1}`, row, x + indent, middle + i * LINE, 1));
    });
    y += LINE * (rows.length - 1);
    x += needed + FAR;
  }
  if (frames.length > 0) shapes.push({ kind: 'path', name: 'legend frames', role: 'leader', path: frames });
  return { shapes, bottom: shapes.length > 0 ? y + LINE : y };
}

const swatch = (x: number, middle: number): Command[] =>
  box(x, middle - SWATCH.height / 2, SWATCH.width, SWATCH.height);

/** What a role looks like, in the width of a swatch. */
function sample(role: ShapeRole, x: number, y: number): Command[] {
  if (role === 'hardware') return hardwareRing({ x: x + SWATCH.width / 2, y });
  if (pens[role].fill) return swatch(x, y);
  const [from, to] = [x, x + SWATCH.width];
  if (role === 'notch') return notchWedge({ x: (from + to) / 2, y: y + 1.1 }, { x: 0, y: -1 });
  if (role === 'break') return breakLine(from + 1.2, to - 1.2, y);
  const ends = [
    { x: from, y },
    { x: to, y },
  ] as const;
  if (role === 'zigzag' || role === 'pinked' || role === 'teeth') return zigzag(...ends);
  return role === 'grain' ? grainArrow(...ends) : polyline(...ends);
}
