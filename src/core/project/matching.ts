/** Prints that begin again and again along the selvage, and the pieces that take the same place on them. */
import { formatLength, listed, quote, type Diagnostic, type Place, plainName } from '../measure/index.ts';
import { unknownThing } from './remarks.ts';
import { oncePer } from './cache.ts';
import { PatternAmounts } from './pattern-amounts.ts';
import { readValue, type Reader } from './raw-value.ts';
import type { Pattern } from './pattern.ts';
import type { ProjectFile } from './schema.ts';

export type Matching = {
  /** For each role whose print repeats, how far it is from where it begins to where it begins again, in mm. */
  repeats: ReadonlyMap<string, number>;
  /** For each piece that is matched its group, and how far above its lower cut edge the place lies, in mm. */
  matches: ReadonlyMap<string, { group: string; at: number }>;
  /** What stands in the way, with its place in the file. */
  findings: Diagnostic[];
};

/** No print begins again after more, in mm. Common practice, no source. */
const LONGEST_REPEAT = 3000;

/**
 * Which pieces of a pattern are matched, and on what repeat. What cannot be is left out and named in the findings.
 * Apart from resolveProject, because only who lays or checks needs it.
 *
 * @example
 * matchingOf(pattern).matches.get('front') // => { group: 'match 1', at: 50.8 }
 */
export const matchingOf = oncePer(readMatching);

/**
 * The same in a sentence or two for whoever buys and cuts a cloth; undefined where nothing is matched on it.
 *
 * @example matchWords(pattern, 'outer') // => 'The print begins again every 4 in. Match it on Front and Back.'
 */
export function matchWords(pattern: Pattern, role: string): string | undefined {
  const { repeats, matches } = matchingOf(pattern);
  const repeat = repeats.get(role);
  const pieces = Object.values(pattern.pieces).filter(({ name, material }) => material === role && matches.has(name));
  if (repeat === undefined || pieces.length === 0) return undefined;
  const groups = Map.groupBy(pieces, ({ name }) => matches.get(name)!.group);
  const which = [...groups.values()].map((group) =>
    group.length === 1 && group[0]!.count > 1
      ? `all ${group[0]!.count} of ${group[0]!.label}`
      : listed(group.map(({ label }) => label)),
  );
  const every = formatLength(repeat, pattern.edition, { grid: pattern.grid });
  return `The print begins again every ${every}. Match it on ${which.join('; and on ')}.`;
}

/** For the drawing of a cloth: its repeat, and how high on which piece the print is the same; in mm. */
export function printOf(
  pattern: Pattern,
  role: string,
): { repeat: number; at: Readonly<Record<string, number>> } | undefined {
  const { repeats, matches } = matchingOf(pattern);
  const repeat = repeats.get(role);
  const at = Object.fromEntries(
    [...matches].flatMap(([piece, { at }]) => (pattern.pieces[piece]?.material === role ? [[piece, at]] : [])),
  );
  return repeat === undefined || Object.keys(at).length === 0 ? undefined : { repeat, at };
}

function readMatching(pattern: Pattern): Matching {
  const amounts = new PatternAmounts(pattern);
  const { file, home, names } = amounts.compiled;
  const findings: Diagnostic[] = [];
  const reader: Reader = { home, names, findings };
  const refuse = (place: Place, code: string, message: string, fix: string): void => {
    findings.push({ severity: 'error', place, code, message, fix });
  };
  const lengthAt = (raw: Parameters<typeof readValue>[0], place: Place): number | undefined => {
    const rawValue = readValue(raw, place, reader);
    return rawValue && amounts.length(rawValue);
  };

  const repeats = new Map<string, number>();
  for (const [role, raw] of Object.entries(file.materials ?? {})) {
    // Another cloth that plays the role has not its print.
    if (typeof raw === 'string' || raw.repeat === undefined || pattern.materials[role]?.use !== raw.use) continue;
    const place: Place = ['materials', role, 'repeat'];
    const repeat = lengthAt(raw.repeat, place);
    if (repeat === undefined) continue;
    if (repeat >= 1 && repeat <= LONGEST_REPEAT) repeats.set(role, repeat);
    else {
      const message = `A print cannot begin again every ${amounts.say(repeat)}.`;
      refuse(place, 'no-repeat', message, 'Measure from one motif to the next alike along the selvage.');
    }
  }

  const matches = new Map<string, { group: string; at: number }>();
  for (const [i, group] of (file.cutting?.match ?? []).entries())
    matchGroup(group, `match ${i + 1}`, ['cutting', 'match', i]);
  return { repeats, matches, findings: [...findings, ...amounts.findings] };

  function matchGroup({ pieces, at }: MatchFile, group: string, place: Place): void {
    if (at !== undefined && at.length !== pieces.length) {
      const message = `There are ${pieces.length} pieces to match and ${at.length} heights.`;
      refuse([...place, 'at'], 'heights', message, 'Give a height for each piece, in the same order.');
      return;
    }
    const found = pieces.flatMap((name, k): { name: string; at: number; place: Place }[] => {
      const its: Place = [...place, 'pieces', k];
      const all = [...amounts.compiled.pieces.keys()];
      const own = all.find((one) => plainName(one) === plainName(name));
      if (own === undefined) {
        findings.push(unknownThing('piece', name, all, its));
        return [];
      }
      const piece = Object.hasOwn(pattern.pieces, own) ? pattern.pieces[own] : undefined;
      // One that an option leaves out needs no match.
      if (!piece) return [];
      if (matches.has(own)) {
        refuse(its, 'matched-twice', `${quote(own)} is matched already.`, 'Name it in one list only.');
        return [];
      }
      if (piece.grain === 'crosswise' || piece.grain === 'bias') {
        const how = piece.grain === 'bias' ? 'on the bias' : 'crosswise';
        const message = `${quote(own)} is cut ${how}; the print begins again along the selvage.`;
        refuse(its, 'match-across', message, 'Cut it lengthwise, or let it lie unmatched.');
        return [];
      }
      const height = at === undefined ? 0 : lengthAt(at[k]!, [...place, 'at', k]);
      if (height === undefined) return [];
      if (height < -0.05 || height > piece.size.height + 0.05) {
        const message = `${quote(own)} is ${amounts.say(piece.size.height)} high; ${amounts.say(height)} lies outside it.`;
        refuse([...place, 'at', k], 'outside', message, 'Measure from its lower cut edge.');
        return [];
      }
      return [{ name: own, at: height, place: its }];
    });
    const [first] = found;
    if (!first) return;
    const role = pattern.pieces[first.name]!.material;
    const other = found.find(({ name }) => pattern.pieces[name]!.material !== role);
    if (other) {
      const message = `${quote(first.name)} and ${quote(other.name)} are not cut from one cloth.`;
      refuse(other.place, 'two-cloths', message, 'Match the pieces of each cloth in a list of their own.');
      return;
    }
    if (!Object.hasOwn(file.materials ?? {}, role)) return;
    if (!repeats.has(role)) {
      const raw = file.materials![role]!;
      // An impossible one is named already.
      if (typeof raw === 'string' || raw.repeat === undefined) {
        const message = `Pieces of ${quote(role)} are to match, but its print has no repeat.`;
        const fix = 'Under materials, give it one: repeat: 4.';
        findings.push({ severity: 'warning', place, code: 'nothing-to-match', message, fix });
      }
      return;
    }
    const lonely = found.length === 1 && pattern.pieces[first.name]!.count === 1 && pieces.length === 1;
    if (lonely) {
      const message = `${quote(first.name)} is cut once, so there is nothing that it could match.`;
      findings.push({ severity: 'warning', place, code: 'nothing-to-match', message, fix: 'Name what it meets.' });
      return;
    }
    for (const { name, at: height } of found) matches.set(name, { group, at: height });
  }
}

type MatchFile = NonNullable<NonNullable<ProjectFile['cutting']>['match']>[number];
