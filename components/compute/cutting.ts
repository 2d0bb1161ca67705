/**
 * Lays cloth, works out lists and tries classes out. A page is built with it; in a browser it runs in a worker that is
 * started when something is asked that the page was not built with. Nothing on a page may import it but by the worker.
 */
import {
  cutSentences,
  demandOf,
  drawLayout,
  formatLength,
  isCloth,
  kitCsv,
  kitSteps,
  searchLayouts,
  numbered,
  matchWords,
  stripWords,
  washedWidth,
  piecesOf,
  planSessions,
  prepare,
  printOf,
  boltOf,
  sellingOf,
  setsFor,
  sharesOf,
  shopLength,
  surfaceOf,
  tasksOf,
  kitRows,
  toBuy,
  turnedWords,
  type Cloth,
  type Fit,
  type Group,
  type Kit,
  type LaidCloth,
  type Layout,
  type Pattern,
  type Role,
  type Scene,
  type Selling,
} from '../../src/core/index.ts';
import { readOwnCloth, type OwnClothReading } from '../words/layout-study/own-cloth.ts';
import { preCuts } from '../words/layout-study/pre-cuts.ts';
import type {
  ClassRequest,
  DrawnLayout,
  LayoutRequest,
  ClassPlan,
  LayoutWords,
  PricedList,
  LayoutSheet,
} from './cutting-types.ts';

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
export function startOf(pattern: Pattern, role?: string): LayoutRequest | undefined {
  const roles = clothRoles(pattern);
  const found = roles.find((one) => one.role === role) ?? roles[0];
  if (!found) return undefined;
  return {
    role: found.role,
    as: 'bolt',
    width: found.material?.width ?? 0,
    nap: found.material?.nap === 'one way',
    manner: pattern.cutting.manner,
    folded: false,
    sets: 1,
  };
}

/** Better and better layouts, as long as it is worth the wait. The first comes at once. */
export function* layOutOnCloth(
  pattern: Pattern,
  wish: LayoutRequest,
  fit?: Fit,
  seconds?: number,
): Generator<DrawnLayout | undefined> {
  const role = pattern.materials[wish.role];
  const { material } = role ?? {};
  if (!role || !material) return;
  const { edition, cutting } = pattern;
  const selling = sellingOf(material, edition);
  const own = ownCloths(pattern, role, wish, selling);
  const options = {
    ...cutting,
    manner: wish.manner,
    edition,
    selling,
    ...(seconds !== undefined && { seconds }),
  };
  const demand = demandOf(pattern, role.role, wish.sets, own.cloths.at(-1)!.width);
  for (const { better } of searchLayouts(demand, own.cloths, options))
    yield better && tell(pattern, { role, wish, selling, ...own }, better, fit);
}

/** The cloths to lay on; of bolts that end, by name, how much there is in mm; what was read of a learner's own. */
type Own = { cloths: Cloth[]; rests: ReadonlyMap<string, number>; words: LayoutWords['own'] };

/** The cloths to lay on, in their order: what a learner has, then what the shop has. */
function ownCloths(
  pattern: Pattern,
  role: Role,
  { as, width, nap: hasNap, folded, own }: LayoutRequest,
  selling: Selling,
): Own {
  const { edition, grid } = pattern;
  const set = (mm: number): string => formatLength(mm, edition, { grid, style: 'set' });
  const nap = hasNap ? ('one way' as const) : ('none' as const);
  // What a learner has by itself is measured as it is; cloth from the shop is washed first.
  const washed = role.material ? washedWidth(width, role.material) : width;
  const bolt: Cloth = { ...boltOf(pattern, role, washed), nap, folded };
  const preCut = preCuts[edition].find(({ key }) => key === as);
  const bought: Cloth = preCut
    ? { ...bolt, name: preCut.label, kind: 'pre-cut', width: preCut.width, length: preCut.length }
    : bolt;
  if (!own) return { cloths: [bought], rests: new Map(), words: undefined };
  const how = { edition: own.edition, grid };
  const offcuts = readOwnCloth(own.offcuts, { ...how, goesOn: false });
  const bolts = preCut ? undefined : readOwnCloth(own.bolts, { ...how, goesOn: true });
  const written = (bolts?.cloths ?? []).map(({ length, ...one }, i): Cloth => ({
    ...bolt,
    ...one,
    name: `bolt ${i + 1}, ${set(one.width)} wide`,
    ...(length !== undefined && { length: laidFrom(length, selling) }),
  }));
  const mine = offcuts.cloths.map((one): Cloth => ({
    ...bolt,
    ...one,
    name: `offcut of ${set(one.width)} × ${set(one.length!)}`,
    kind: 'offcut',
    folded: false,
  }));
  const rest = preCut ? 'pre-cuts' : 'the bolt';
  return {
    cloths: [...mine, ...(written.length > 0 ? written : [bought])],
    rests: new Map(written.map(({ name }, i) => [name, bolts!.cloths[i]!.length ?? Infinity])),
    words: {
      offcuts: read(
        offcuts,
        `No offcut is written here, so everything comes from ${written.length > 0 ? 'the bolts' : rest}.`,
      ),
      bolts: read(
        bolts ?? { words: [], faults: [] },
        bolts
          ? `No bolt is written here: one ${set(width)} wide is taken.`
          : `You buy ${preCut!.label}, so no bolt is looked at.`,
      ),
    },
  };
}

/** What can be laid on the rest of a bolt, once its end is straight and it has shrunk. */
const laidFrom = (length: number, { straightening = 0, shrinkage = 0 }: Selling): number =>
  Math.max(0.1, (length - straightening) * (1 - shrinkage / 100));

const read = ({ words, faults }: Pick<OwnClothReading, 'words' | 'faults'>, none: string) => ({
  words: words.length > 0 ? `Read as: ${words.join('; ')}.` : none,
  faults,
});

/** The layout that a page is built with: the best that a moment finds. */
export function layOutAtOnce(pattern: Pattern, wish: LayoutRequest, fit?: Fit): DrawnLayout | undefined {
  let best: DrawnLayout | undefined;
  for (const laid of layOutOnCloth(pattern, wish, fit)) best = laid ?? best;
  return best;
}

type Described = { role: Role; wish: LayoutRequest; selling: Selling } & Pick<Own, 'cloths' | 'rests' | 'words'>;

function tell(
  pattern: Pattern,
  { role, wish, selling, cloths: laidOn, rests, words: own }: Described,
  layout: Layout,
  fit?: Fit,
): DrawnLayout {
  const { edition } = pattern;
  const set = (mm: number): string => formatLength(mm, edition, { grid: pattern.grid, style: 'set' });
  const shop = (mm: number): string => shopLength(mm, edition, 'set');
  const { bound, proven, preCuts: sheets, length, cloths } = layout;
  const fromBolt = wish.as === 'bolt';
  const percent = (share: number): string => `${Math.round(100 * share)}\u202f%`;
  // Each bolt is cut by itself in the shop, and its end straightened. Of a rest the shop gives no more than there is.
  const cut = cloths.filter(({ kind, length: used }) => kind === 'bolt' && used > 0);
  const buys = cut.map((laid) => {
    const buy = toBuy(laid.length, selling);
    const over = Math.max(0, buy.total - (rests.get(laid.cloth) ?? Infinity));
    return {
      name: laid.cloth + again(laid),
      ...buy,
      rounding: Math.max(0, buy.rounding - over),
      total: buy.total - over,
    };
  });
  const sum = (part: 'shrinkage' | 'straightening' | 'rounding'): number =>
    buys.reduce((all, buy) => all + buy[part], 0);
  const offcuts = cloths.filter(({ kind }) => kind === 'offcut').length;
  const rows = [
    ...(offcuts > 0 ? [{ what: 'Of your offcuts', amount: String(offcuts) }] : []),
    ...(fromBolt
      ? [
          { what: 'Length as laid out', amount: set(length) },
          { what: 'No layout can be shorter than', amount: set(bound.length) },
          { what: 'Cloth that the pieces take', amount: percent(layout.share) },
          ...(sum('shrinkage') > 0.05 ? [{ what: 'More, because it shrinks', amount: set(sum('shrinkage')) }] : []),
          ...(role.material?.shrinksAcross && !wish.own
            ? [{ what: 'Wide once washed', amount: set(laidOn.at(-1)!.width) }]
            : []),
          { what: 'More, to straighten the end', amount: set(sum('straightening')) },
          { what: 'More, to the next length sold', amount: set(sum('rounding')) },
          ...(buys.length > 1
            ? buys.map(({ name, total }) => ({ what: `To buy of ${name}`, amount: shop(total) }))
            : [{ what: 'To buy', amount: length > 0 ? shop(buys[0]!.total) : 'nothing' }]),
        ]
      : [
          { what: 'To buy', amount: String(sheets) },
          { what: 'No layout can do with fewer than', amount: String(bound.preCuts) },
          { what: 'Cloth that the pieces take', amount: percent(layout.share) },
        ]),
  ];
  const match = matchWords(pattern, role.role);
  const strips = stripWords(pattern, role.role, laidOn.at(-1)!.width);
  const shown = cloths.slice(0, MOST_SHEETS).map((laid) => sheetOf(pattern, role, laid, buys.length, fit));
  const words: LayoutWords = {
    sheets: shown.map(({ sheet }) => sheet),
    more: Math.max(0, cloths.length - MOST_SHEETS),
    rows,
    proven,
    sentence: [sentenceOf(), match, strips].filter((words) => words !== undefined).join(' '),
    troubles: layout.findings
      .filter(({ severity }) => severity !== 'note')
      .map(({ message, fix }) => (fix === undefined ? message : `${message} ${fix}`)),
    ...(own && { own }),
  };
  return { words, scenes: shown.map(({ scene }) => scene) };

  function sentenceOf(): string {
    if (layout.left.length > 0) return 'Not everything goes on this cloth.';
    if (offcuts > 0 && length === 0 && sheets === 0) return 'Everything goes on your offcuts: you buy nothing.';
    const before = offcuts > 0 ? `With ${offcuts === 1 ? 'an offcut' : `${offcuts} offcuts`} of yours, the` : 'The';
    if (!fromBolt) {
      const words = proven ? 'No layout does with fewer: proven.' : 'Fewer were not found so far.';
      return `${before} pieces take ${sheets === 1 ? 'one' : sheets} of these. ${words}`;
    }
    const words = proven ? 'No layout takes less: proven.' : 'No shorter one was found so far.';
    const taken = buys.length > 1 ? `${buys.length} bolts` : `cloth ${set(cut[0]!.to - cut[0]!.from)} wide`;
    const bought = buys.map(({ total }) => shop(total)).join(' and ');
    return `${before} pieces take ${set(length)} of ${taken}. You buy ${bought}. ${words}`;
  }
}

/** Of cloths that are alike, which one. */
const again = ({ number }: LaidCloth): string => (number > 1 ? ` (${number})` : '');

function sheetOf(
  pattern: Pattern,
  role: Role,
  laid: LaidCloth,
  bolts: number,
  fit?: Fit,
): { sheet: LayoutSheet; scene: Scene } {
  const set = (mm: number): string => formatLength(mm, pattern.edition, { grid: pattern.grid, style: 'set' });
  const labels = Object.fromEntries(Object.values(pattern.pieces).map(({ name, label }) => [name, label]));
  const isOnlyBolt = laid.kind === 'bolt' && bolts < 2;
  const number = laid.kind === 'pre-cut' ? ` (${laid.number})` : again(laid);
  const title = isOnlyBolt ? role.label : `${role.label}: ${laid.cloth}${number}`;
  const surface = surfaceOf({ material: role.role }, pattern.materials);
  const print = printOf(pattern, role.role);
  const scene = drawLayout(laid, {
    ...pattern,
    ...{ labels, title, surface },
    ...(print && { print }),
    // Offcuts and pre-cuts are small, and there are more of them to look at.
    ...(fit && { fit: laid.kind === 'bolt' || !fit.height ? fit : { ...fit, height: 0.6 * fit.height } }),
  });
  const inOrder = numbered(laid.placements);
  const pieces = inOrder.slice(0, MOST_PIECES).map(({ n, piece, at, size, angle, mirrored, layers }) => {
    const turned = [turnedWords(angle), mirrored ? ', mirrored' : '', layers === 2 ? ', cut double' : ''].join('');
    const [left, up, width, height] = [at.x, at.y, size.width, size.height].map(set);
    const label = labels[piece] ?? piece;
    return { n, label, left: left!, up: up!, width: width!, height: height!, turned: turned.replace(/^, /, '') };
  });
  return { sheet: { title, pieces, cuts: cutSentences(laid, { labels, set }) }, scene };
}

/** The list for a group, cloth by cloth. */
export function* buy(
  pattern: Pattern,
  group: Group,
  options: { currency: string; prices?: Record<string, number> },
): Generator<undefined, { list: PricedList; kit: Kit }> {
  const steps = kitSteps(pattern, group, options);
  for (;;) {
    const next = steps.next();
    if (next.done) return { list: listOf(next.value, pattern), kit: next.value };
    yield undefined;
  }
}

export function buyAtOnce(pattern: Pattern, group: Group, options: { currency: string }): PricedList {
  const steps = buy(pattern, group, options);
  for (;;) {
    const next = steps.next();
    if (next.done) return next.value.list;
  }
}

function listOf(kit: Kit, pattern: Pattern): PricedList {
  const { edition } = pattern;
  const { shares } = sharesOf(pattern, kit.group);
  const sizes =
    shares[0]?.size === undefined ? undefined : shares.map(({ sets, size }) => `${sets} of size ${size!}`).join(', ');
  return {
    ...(sizes !== undefined && { sizes }),
    group: kit.group,
    sets: setsFor(kit.group),
    lines: kit.lines.flatMap((line) =>
      kitRows(line, edition).map((row) => ({
        ...row,
        ...(line.price && { cost: line.price.cost, price: line.price.amount }),
      })),
    ),
    total: kit.cost.total,
    perMaker: kit.cost.perMaker,
    unpriced: kit.unpriced,
    troubles: kit.findings
      .filter(({ severity }) => severity !== 'note')
      .map(({ message, fix }) => (fix === undefined ? message : `${message} ${fix}`)),
  };
}

/** Everything for a class: the list, what lies ready, and how it goes. */
export function* forClass(pattern: Pattern, wish: ClassRequest, currency: string): Generator<undefined, ClassPlan> {
  const { makers, spares, machines, irons, sessions, lessons, prices, sizes } = wish;
  const group = { makers, spares, machines, ...(sizes && { sizes }) };
  const { list, kit } = yield* buy(pattern, group, { currency, prices });
  const room = { makers: kit.group.makers, machines: kit.group.machines ?? machines, irons };
  return {
    list,
    csv: kitCsv(kit, pattern.edition),
    preparation: prepare(pattern, kit.group),
    plan: planSessions(tasksOf(pattern), { minutes: sessions, lessons, room }),
  };
}

export function forClassAtOnce(pattern: Pattern, wish: ClassRequest, currency: string): ClassPlan {
  const steps = forClass(pattern, wish, currency);
  for (;;) {
    const next = steps.next();
    if (next.done) return next.value;
  }
}
