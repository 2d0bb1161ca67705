/** What to buy for a group: every material with how it comes to that much, what it costs, and what stands in the way. */
import type { Diagnostic } from '../measure/index.ts';
import { clothNeed, isByLength, isCloth, piecesOf, stripWords, washedWidth } from './cloth.ts';
import { hardwareUsed } from '../project/steps/hardware-used.ts';
import { countedNeed } from './counted.ts';
import { setsFor, checkGroup } from './group.ts';
import { sharesOf, type Share } from './shares.ts';
import { needlesNeed } from './needles.ts';
import { perOf, priced } from './price.ts';
import { threadNeed } from './thread.ts';
import { matchWords } from '../project/matching.ts';
import type { LayOptions } from '../layout/index.ts';
import type { Pattern, Role } from '../project/pattern.ts';
import type { ClothNeed } from './cloth.ts';
import type { CountedNeed } from './counted.ts';
import type { Group } from './group.ts';
import type { NeedleNeed } from './needles.ts';
import type { Bought, Per, Priced } from './price.ts';
import type { ThreadNeed } from './thread.ts';

/** A line of the list. `key` is the role; needles have none in the project and are called “needles”. */
export type KitLine = {
  key: string;
  /** What it is in this project. */
  label: string;
  /** What to ask for in the shop. */
  material: string;
  note?: string;
  /** Labels of the pieces it is for. */
  pieces: string[];
  price?: Priced;
  /** What a price would be for, where there is none. */
  per?: Per;
} & (
  | ({ kind: 'cloth' } & Omit<ClothNeed, 'findings'>)
  | ({ kind: 'thread' } & ThreadNeed)
  | ({ kind: 'counted' } & CountedNeed)
  | { kind: 'needles'; needles: NeedleNeed[] }
);

export type Kit = {
  group: Group;
  /** Makers and spares together. */
  sets: number;
  lines: KitLine[];
  currency: string;
  /** What the priced lines cost together, and that shared among the makers. */
  cost: { total: number; perMaker: number };
  /** Labels of the lines that have no price. */
  unpriced: string[];
  findings: Diagnostic[];
};

export type KitOptions = {
  /** EUR if left out. */
  currency?: string;
  /** Prices by key that go before those of materials.yaml, for the same unit. */
  prices?: Readonly<Record<string, number>>;
  laying?: LayOptions;
};

/**
 * The list for a group, at the size of a pattern.
 *
 * @example
 * kitFor(pattern, { makers: 8, spares: 1 }).lines[0]?.label // => 'Print for the cover and the flap'
 */
export function kitFor(pattern: Pattern, group: Group, options: KitOptions = {}): Kit {
  const steps = kitSteps(pattern, group, options);
  for (;;) {
    const next = steps.next();
    if (next.done) return next.value;
  }
}

/** The same cloth by cloth, for a worker that tells how far it is and hears whether to end. */
export function* kitSteps(
  pattern: Pattern,
  wish: Group,
  options: KitOptions = {},
): Generator<{ done: number; all: number }, Kit, void> {
  const { group, findings } = checkGroup(wish);
  const sets = setsFor(group);
  const { shares, findings: misread } = sharesOf(pattern, group);
  findings.push(...misread);
  const currency = options.currency ?? 'EUR';
  const roles = Object.values(pattern.materials);
  const lines: KitLine[] = [];
  const unpriced: string[] = [];
  for (const [i, role] of roles.entries()) {
    const line = lineOf(pattern, role, { group, sets, shares }, options, findings);
    if (line) {
      const bought = boughtOf(line);
      const price = priced(role, bought, { currency, edition: pattern.edition }, options.prices?.[role.role]);
      if (price && 'cost' in price) lines.push({ ...line, price });
      else {
        lines.push({ ...line, per: perOf(role, bought, pattern.edition) });
        unpriced.push(line.label);
        if (price) findings.push(price);
      }
    }
    yield { done: i + 1, all: roles.length };
  }
  const needles = needlesNeed(pattern, group);
  if (needles.length > 0) {
    lines.push({ key: 'needles', kind: 'needles', label: 'Needles', material: 'Machine needles', pieces: [], needles });
    // Nothing in the project gives them a price.
    unpriced.push('Needles');
  }
  const total = lines.reduce((sum, { price }) => sum + (price?.cost ?? 0), 0);
  return { group, sets, lines, currency, cost: { total, perMaker: total / group.makers }, unpriced, findings };
}

function lineOf(
  pattern: Pattern,
  role: Role,
  { group, sets, shares }: { group: Group; sets: number; shares: readonly Share[] },
  options: KitOptions,
  findings: Diagnostic[],
): KitLine | undefined {
  const pieces = piecesOf(pattern, role.role).map(({ label }) => label);
  if (pieces.length === 0 && role.count === undefined && hardwareUsed(pattern, role.role) === 0) return undefined;
  const width = role.material?.width;
  const notes = [
    role.note ?? role.material?.note,
    matchWords(pattern, role.role),
    ...shares.flatMap(({ pattern: one, size }) => {
      const words = width && stripWords(one, role.role, washedWidth(width, role.material!));
      return words ? [size === undefined ? words : `Size ${size}: ${words}`] : [];
    }),
  ];
  const note = notes.filter((one) => typeof one === 'string').join(' ');
  const shared = {
    key: role.role,
    label: role.label,
    material: role.material?.label ?? role.use,
    pieces,
    ...(note !== '' && { note }),
  };
  if (role.material?.kind === 'thread') return { ...shared, kind: 'thread', ...threadNeed(shares, role, group) };
  if (!isCloth(role) && !isByLength(role)) return { ...shared, kind: 'counted', ...countedNeed(shares, role) };
  const need = clothNeed(pattern, role, sets, { ...options.laying, shares });
  if (!need) return undefined;
  if (!('layout' in need)) {
    findings.push(need);
    return undefined;
  }
  const { findings: found, ...rest } = need;
  findings.push(...found);
  return { ...shared, kind: 'cloth', ...rest };
}

function boughtOf(line: KitLine): Bought {
  switch (line.kind) {
    case 'cloth':
      return { length: line.buy.total };
    case 'thread':
      return { spool: line.spools };
    case 'counted':
      // By the piece, what is needed; by the pack, whole packs.
      return line.pack > 1 ? { pack: line.packs, piece: line.packs * line.pack } : { piece: line.needed };
    case 'needles':
      return {};
  }
}
