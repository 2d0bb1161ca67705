/**
 * Lays cloth, reckons lists and tries classes out. A page is built with it; in a browser it runs in a worker that is
 * started when something is asked that the page was not built with. Nothing on a page may import it but by the worker.
 */
import {
  demandOf,
  drawLayout,
  formatLength,
  isCloth,
  kitCsv,
  kitSteps,
  layOutSteps,
  listed,
  piecesOf,
  planSessions,
  prepare,
  boltOf,
  sellingOf,
  setsFor,
  shopLength,
  surfaceOf,
  tasksOf,
  tellLine,
  turnedWords,
  type Cloth,
  type Fit,
  type Group,
  type Kit,
  type LaidCloth,
  type Layout,
  type Listed,
  type Pattern,
  type Role,
  type Scene,
} from '../../src/core/index.ts';
import { preCuts } from './pre-cuts.ts';
import type { ClassWish, Laid, LayoutWish, ToldClass, ToldLayout, ToldList, ToldSheet } from './told.ts';

/** Sheets beyond these are counted: nobody looks at forty fat quarters. */
const MOST_SHEETS = 6;
/** Rows of a table of pieces. */
const MOST_PIECES = 120;
/** How long the study goes on looking for a shorter layout, in seconds. */
export const SECONDS = 6;

/** The roles that a layout can be made of, in the file's order. */
export const clothRoles = (pattern: Pattern): Role[] =>
  Object.values(pattern.materials).filter((role) => isCloth(role) && piecesOf(pattern, role.role).length > 0);

/** What the study begins with: the project's own cloth, from the bolt. */
export function startOf(pattern: Pattern, role?: string): LayoutWish | undefined {
  const roles = clothRoles(pattern);
  const found = roles.find((one) => one.role === role) ?? roles[0];
  if (!found) return undefined;
  return {
    role: found.role,
    as: 'bolt',
    width: found.material?.width ?? 0,
    nap: found.material?.nap === 'one way',
    manner: pattern.cutting.manner,
    sets: 1,
  };
}

/** Better and better layouts, as long as it is worth the wait. The first comes at once. */
export function* lay(pattern: Pattern, wish: LayoutWish, fit?: Fit, seconds?: number): Generator<Laid | undefined> {
  const role = pattern.materials[wish.role];
  const { material } = role ?? {};
  if (!role || !material) return;
  const { edition, cutting } = pattern;
  const preCut = preCuts[edition].find(({ key }) => key === wish.as);
  const nap = wish.nap ? ('one way' as const) : ('none' as const);
  const cloth: Cloth = preCut
    ? { name: preCut.label, kind: 'pre-cut', width: preCut.width, length: preCut.length, nap }
    : { ...boltOf(role, wish.width), nap };
  const demand = demandOf(piecesOf(pattern, role.role), wish.sets, cloth.width);
  const options = {
    ...cutting,
    manner: wish.manner,
    edition,
    selling: sellingOf(material, edition),
    ...(seconds !== undefined && { seconds }),
  };
  for (const { better } of layOutSteps(demand, [cloth], options))
    yield better && tell(pattern, role, wish, better, fit);
}

/** The layout that a page is built with: the best that a moment finds. */
export function layAtOnce(pattern: Pattern, wish: LayoutWish, fit?: Fit): Laid | undefined {
  let best: Laid | undefined;
  for (const laid of lay(pattern, wish, fit)) best = laid ?? best;
  return best;
}

function tell(pattern: Pattern, role: Role, wish: LayoutWish, layout: Layout, fit?: Fit): Laid {
  const { edition } = pattern;
  const set = (mm: number): string => formatLength(mm, edition, { grid: pattern.grid, style: 'set' });
  const { buy, bound, proven, preCuts: sheets, length } = layout;
  const fromBolt = wish.as === 'bolt';
  const percent = (share: number): string => `${Math.round(100 * share)}\u202f%`;
  const rows = fromBolt
    ? [
        { what: 'Length as laid out', amount: set(length) },
        { what: 'No layout can be shorter than', amount: set(bound.length) },
        { what: 'Cloth that the pieces take', amount: percent(layout.share) },
        ...(buy.shrinkage > 0.05 ? [{ what: 'More, because it shrinks', amount: set(buy.shrinkage) }] : []),
        { what: 'More, to straighten the end', amount: set(buy.straightening) },
        { what: 'More, to the next length sold', amount: set(buy.rounding) },
        { what: 'To buy', amount: shopLength(buy.total, edition, 'set') },
      ]
    : [
        { what: 'To buy', amount: String(sheets) },
        { what: 'No layout can do with fewer than', amount: String(bound.preCuts) },
        { what: 'Cloth that the pieces take', amount: percent(layout.share) },
      ];
  const troubles = layout.findings
    .filter(({ severity }) => severity !== 'note')
    .map(({ message, mend }) => (mend === undefined ? message : `${message} ${mend}`));
  const taken = fromBolt ? `${set(length)} of cloth ${set(wish.width)} wide` : sheets === 1 ? 'one' : String(sheets);
  const words = proven ? 'No layout takes less: proven.' : 'No shorter one was found so far.';
  const sentence =
    layout.left.length > 0
      ? 'Not everything goes on this cloth.'
      : fromBolt
        ? `The pieces take ${taken}. You buy ${shopLength(buy.total, edition, 'set')}. ${words}`
        : `The pieces take ${taken} of these. ${proven ? 'No layout does with fewer: proven.' : 'Fewer were not found so far.'}`;
  const shown = layout.cloths.slice(0, MOST_SHEETS).map((laid) => sheetOf(pattern, role, laid, fit));
  const told: ToldLayout = {
    sheets: shown.map(({ sheet }) => sheet),
    more: Math.max(0, layout.cloths.length - MOST_SHEETS),
    rows,
    proven,
    sentence,
    troubles,
  };
  return { told, scenes: shown.map(({ scene }) => scene) };
}

function sheetOf(pattern: Pattern, role: Role, laid: LaidCloth, fit?: Fit): { sheet: ToldSheet; scene: Scene } {
  const set = (mm: number): string => formatLength(mm, pattern.edition, { grid: pattern.grid, style: 'set' });
  const labels = Object.fromEntries(Object.values(pattern.pieces).map(({ name, label }) => [name, label]));
  const labelOf = (piece: string): string => labels[piece] ?? piece;
  const title = laid.kind === 'bolt' ? role.label : `${role.label}: ${laid.cloth} ${laid.number}`;
  const surface = surfaceOf({ material: role.role }, pattern.materials);
  const scene = drawLayout(laid, { ...pattern, labels, title, surface, ...(fit && { fit }) });
  const inOrder = listed(laid.placements);
  const pieces = inOrder.slice(0, MOST_PIECES).map(({ n, piece, at, size, angle, mirrored }) => {
    const turned = `${turnedWords(angle)}${mirrored ? ', mirrored' : ''}`.replace(/^, /, '');
    const [left, up, width, height] = [at.x, at.y, size.width, size.height].map(set);
    return { n, label: labelOf(piece), left: left!, up: up!, width: width!, height: height!, turned };
  });
  const cuts = laid.cuts.map(({ of, way, measure, makes, leaves }) => {
    const called = (part: string): string => partWords(part, laid.cloth, inOrder, labelOf);
    const where = way === 'across' ? 'from selvage to selvage' : 'along the selvage';
    const rest = leaves === of ? '' : ` ${upper(called(leaves))} is left.`;
    return `${upper(called(of))}: measure ${set(measure)} and cut ${where}. That is ${called(makes)}.${rest}`;
  });
  return { sheet: { title, pieces, cuts }, scene };
}

/** A part of the list of cuts: the cloth, a strip, waste, or a piece by its label and its number in the list. */
function partWords(part: string, cloth: string, pieces: readonly Listed[], labelOf: (piece: string) => string): string {
  if (part === cloth) return 'the cloth';
  const found = pieces.find(({ piece, number }) => part === `${piece} ${number}`);
  return found ? `${labelOf(found.piece)} (${found.n})` : part;
}

const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The list for a group, cloth by cloth. */
export function* buy(
  pattern: Pattern,
  group: Group,
  options: { currency: string; prices?: Record<string, number> },
): Generator<undefined, { list: ToldList; kit: Kit }> {
  const steps = kitSteps(pattern, group, options);
  for (;;) {
    const next = steps.next();
    if (next.done) return { list: listOf(next.value, pattern), kit: next.value };
    yield undefined;
  }
}

export function buyAtOnce(pattern: Pattern, group: Group, options: { currency: string }): ToldList {
  const steps = buy(pattern, group, options);
  for (;;) {
    const next = steps.next();
    if (next.done) return next.value.list;
  }
}

function listOf(kit: Kit, { edition }: Pattern): ToldList {
  return {
    group: kit.group,
    sets: setsFor(kit.group),
    lines: kit.lines.flatMap((line) =>
      tellLine(line, edition).map((told) => ({
        ...told,
        ...(line.price && { cost: line.price.cost, price: line.price.amount }),
      })),
    ),
    total: kit.cost.total,
    perMaker: kit.cost.perMaker,
    unpriced: kit.unpriced,
    troubles: kit.findings
      .filter(({ severity }) => severity !== 'note')
      .map(({ message, mend }) => (mend === undefined ? message : `${message} ${mend}`)),
  };
}

/** Everything for a class: the list, what lies ready, and how it goes. */
export function* forClass(pattern: Pattern, wish: ClassWish, currency: string): Generator<undefined, ToldClass> {
  const { makers, spares, machines, irons, sessions, prices } = wish;
  const { list, kit } = yield* buy(pattern, { makers, spares, machines }, { currency, prices });
  const room = { makers: kit.group.makers, machines: kit.group.machines ?? machines, irons };
  return {
    list,
    csv: kitCsv(kit, pattern.edition),
    preparation: prepare(pattern, kit.group),
    plan: planSessions(tasksOf(pattern), { minutes: sessions, room }),
  };
}

export function forClassAtOnce(pattern: Pattern, wish: ClassWish, currency: string): ToldClass {
  const steps = forClass(pattern, wish, currency);
  for (;;) {
    const next = steps.next();
    if (next.done) return next.value;
  }
}
