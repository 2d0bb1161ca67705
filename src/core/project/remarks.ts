/** What is said of a project file as it is read, and changes nothing in what it comes to. */
import { closest, farApart, formatLength, isOnGrid, listed, quote, plainName, singleBlanks } from '../measure/index.ts';
import type { Diagnostic, Place, Grid } from '../measure/index.ts';
import type { ProjectFile } from './schema.ts';
import type { Reader, RawValue } from './raw-value.ts';

/** A name begins with a letter; a formula tells it from the signs around it. */
const READABLE = /^\p{L}[\p{L}\p{M}\p{N}_'’ -]*$/u;

/** A measure may take a name that a piece gives, and the author reads so. It must not have one that a formula cannot hold. */
export function reportBorrowedNames(
  measures: readonly string[],
  parts: ReadonlyMap<string, { piece: string }>,
  findings: Diagnostic[],
): void {
  const lower = new Map([...parts].map(([name, { piece }]) => [plainName(name), piece]));
  for (const name of measures) {
    const place: Place = ['measures', name];
    const owner = lower.get(plainName(name));
    if (owner !== undefined) {
      if (parts.has(singleBlanks(name))) {
        const message = `The piece ${quote(owner)} has a number of this name, too. Formulas take the measure.`;
        findings.push({ severity: 'note', place, code: 'name-hides', message });
      } else {
        const message = `But for its capitals this is what formulas call a number of the piece ${quote(owner)}.`;
        findings.push({
          severity: 'error',
          place,
          code: 'name-twice',
          message,
          fix: 'Call the measure something else.',
        });
      }
    }
    if (!READABLE.test(singleBlanks(name))) {
      const message = `A formula cannot read the name ${quote(name)}. Begin with a letter; use letters, digits and blanks.`;
      findings.push({ severity: 'error', place, code: 'name-unreadable', message });
    }
  }
}

/** A stated value between two marks is shown rounded everywhere; the author should know. */
export function noteOffGrid(rawValue: RawValue | undefined, grid: Grid, { findings }: Reader): void {
  if (rawValue?.kind !== 'length') return;
  for (const edition of ['inch', 'metric'] as const) {
    const value = rawValue.stated[edition];
    if (value === undefined || isOnGrid(value, edition, grid)) continue;
    const place = rawValue.text === '' ? [...rawValue.place, edition === 'inch' ? 'in' : 'mm'] : rawValue.place;
    const shown = formatLength(value, edition, { grid });
    const message = `This lies between two marks of the ${edition} ruler. Pages show it as ${quote(shown)}.`;
    findings.push({ severity: 'note', place, code: 'off-grid', message });
  }
}

/** The values for both editions that no ruler takes for one length. */
export function reportApart(rawValue: RawValue | undefined, { findings }: Reader): void {
  if (rawValue?.kind !== 'length') return;
  const { inch, metric } = rawValue.stated;
  if (inch === undefined || metric === undefined || !farApart(inch, metric)) return;
  const [said, same, other] = [
    formatLength(inch, 'inch'),
    formatLength(inch, 'metric'),
    formatLength(metric, 'metric'),
  ];
  const message = `${said} is ${same}, but the metric edition says ${other}.`;
  const fix = 'Correct one of them, or say why they differ: editions: <reason>.';
  const place = [...rawValue.place, 'mm'];
  findings.push({ severity: 'error', place, code: 'editions-apart', message, fix, amount: Math.abs(inch - metric) });
}

/** Pile and print run lengthwise; a piece cut another way cannot have them upright. */
export function noteNapAcross(
  name: string,
  { nap, grain }: ProjectFile['pieces'][string],
  place: Place,
  { findings }: Reader,
): void {
  if (nap !== 'up' || grain === undefined || grain === 'lengthwise') return;
  const message = `Pile and print run along the selvage, so on ${quote(name)}, cut ${grain}, they cannot stand upright.`;
  const fix = 'Cut it lengthwise, or take a cloth without a direction and leave nap out.';
  findings.push({ severity: 'warning', place: [...place, 'nap'], code: 'nap-across', message, fix });
}

/** Keeps the first of names that differ by capitals and blanks alone, and reports the others. */
export function distinct(names: string[], where: Place, what: string, findings: Diagnostic[]): string[] {
  const first = new Map<string, string>();
  for (const name of names) {
    const plain = plainName(name);
    const before = first.get(plain);
    if (plain === '') {
      findings.push({
        severity: 'error',
        place: [...where, name],
        code: 'no-name',
        message: `This ${what} has no name.`,
      });
    } else if (before !== undefined) {
      const message = `There are two ${what}s called ${quote(before.trim())}. The second is left out.`;
      findings.push({
        severity: 'error',
        place: [...where, name],
        code: 'name-twice',
        message,
        fix: 'Give one of them another name.',
      });
    } else first.set(plain, name);
  }
  return [...first.values()];
}

/** A name that nothing has, with the nearest one that something has. */
export function unknownThing(what: string, name: string, among: readonly string[], place: Place): Diagnostic {
  const meant = closest(name, among);
  const message = `There is no ${what} called ${quote(name)}.`;
  const all = among.length === 1 ? `There is only ${quote(among[0]!)}.` : `There are ${listed(among.map(quote))}.`;
  const others = among.length > 0 && among.length <= 8 ? all : undefined;
  const fix = meant === undefined ? others : `Do you mean ${quote(meant)}?`;
  return { severity: 'error', place, start: 0, end: name.length, code: 'unknown-name', message, ...(fix && { fix }) };
}
