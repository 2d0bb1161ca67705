/** Whether edges that are meant to meet are of one length on their stitch lines. */
import { type Diagnostic, listed, markOf, type Place, plainName, quote, SAME } from '../measure/index.ts';
import { length } from '../geometry/index.ts';
import { takenByDarts } from './darts.ts';
import { PatternAmounts } from './pattern-amounts.ts';
import { readValue } from './raw-value.ts';
import { unknownEdge } from './shapes.ts';
import { unknownThing } from './remarks.ts';
import type { Pattern, Piece } from './pattern.ts';

/** Eased by more than this share of its length, cloth puckers. Common practice, no source. */
export const EASED = 0.05;

/** What was found of one edge: a length on the stitch line in mm, and what a sentence calls it. */
type Found = { length: number; called: string };

/**
 * The pieces of a file say under `meets` which edges they are sewn to. Each is compared on the stitch lines, curved or
 * straight; of several edges on the other side their sum counts. What an option leaves out meets nothing.
 */
export function checkEdges(pattern: Pattern): Diagnostic[] {
  const { file } = pattern.origin;
  const meeting = Object.entries(file.pieces).filter(([, { meets }]) => meets);
  if (meeting.length === 0) return [];
  const amounts = new PatternAmounts(pattern);
  const findings: Diagnostic[] = [];
  const reader = { home: pattern.home, names: amounts.compiled.names, findings };
  for (const [name, { meets = {} }] of meeting) {
    const piece = own(pattern.pieces, name);
    if (!piece) continue;
    for (const [edge, said] of Object.entries(meets)) {
      const place: Place = ['pieces', name, 'meets', edge];
      const [others, allowed] = typeof said === 'string' || Array.isArray(said) ? [said] : [said.edges, said.eased];
      const here = lengthOf(piece, edge, place, findings);
      const there = [others].flat().map((other) => named(other, pattern, place, findings));
      const rawValue = allowed === undefined ? undefined : readValue(allowed, [...place, 'eased'], reader);
      const eased = rawValue ? amounts.length(rawValue) : 0;
      if (!here || eased === undefined || there.some((one) => one === undefined)) continue;
      const found = there as Found[];
      const sum = found.reduce((all, one) => all + one.length, 0);
      const amount = Math.abs(here.length - sum);
      const say = (mm: number) => amounts.say(mm);
      const together =
        found.length > 1 ? `${listed(found.map(({ called }) => called))} together are` : `${found[0]!.called} is`;
      const lengths = `On the stitch line ${here.called} is ${say(here.length)}, and ${together} ${say(sum)}.`;
      if (amount > eased + SAME) {
        const message = `${lengths} They differ by ${say(amount)}.`;
        const edges = Array.isArray(others) ? `[${others.join(', ')}]` : others;
        const fix = `Make both alike. What is eased in is said with it: { edges: ${edges}, eased: ${say(markAbove(amount, pattern))} }.`;
        findings.push({ severity: 'error', place, code: 'edges-differ', message, fix, amount });
      } else if (amount > EASED * Math.min(here.length, sum)) {
        const message = `${lengths} To ease in ${say(amount)} puckers the longer one.`;
        const fix = 'Gather the longer edge, or take it in.';
        findings.push({ severity: 'warning', place, code: 'edges-differ', message, fix, amount });
      }
    }
  }
  return [...findings, ...amounts.findings];
}

/** The next mark of the ruler, in mm: what can be written as a length and is not too little. */
function markAbove(mm: number, { edition, grid }: Pattern): number {
  const mark = markOf(edition, grid);
  return Math.ceil(mm / mark - 1e-6) * mark;
}

const own = (pieces: Pattern['pieces'], name: string): Piece | undefined =>
  Object.hasOwn(pieces, name) ? pieces[name] : undefined;

/** An edge by the name of its piece and its own: `front armhole`. What does not exist is reported. */
function named(text: string, pattern: Pattern, place: Place, findings: Diagnostic[]): Found | undefined {
  const all = Object.keys(pattern.origin.file.pieces);
  const starts = all.filter((name) => plainName(text).startsWith(`${plainName(name)} `));
  const name = starts.sort((a, b) => b.length - a.length)[0];
  if (name === undefined) {
    const finding = unknownThing('piece', text, all, place);
    findings.push({ ...finding, fix: 'Name the piece and its edge: “side bottom”.' });
    return undefined;
  }
  const piece = own(pattern.pieces, name);
  return piece && lengthOf(piece, plainName(text).slice(plainName(name).length + 1), place, findings);
}

function lengthOf(piece: Piece, edge: string, place: Place, findings: Diagnostic[]): Found | undefined {
  const names = [...new Set(piece.outline.map(({ name }) => name))];
  const name = names.find((one) => plainName(one) === plainName(edge));
  if (name === undefined) {
    findings.push(unknownEdge(edge, names, piece.label, place));
    return undefined;
  }
  // The sides of a pleated piece are as long as it lies once it is folded, and so is an edge with pleats along it.
  const isFolded = piece.pleats && (name === 'left' || name === 'right');
  const along = piece.edgePleats?.edge === name ? piece.edgePleats : undefined;
  const mm = along
    ? along.pleated
    : isFolded
      ? piece.sewn.height
      : length(piece.outline, name) - takenByDarts(piece.darts, name);
  return { length: mm, called: `the ${name} of ${quote(piece.label)}` };
}
