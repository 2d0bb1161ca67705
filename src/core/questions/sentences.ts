/** What is said about each slip: second person, kind, and under twenty words a sentence. */
import { quote } from '../measure/index.ts';
import { constantAt, type Edit } from './edits.ts';
import type { Formula, Node } from '../formula/index.ts';
import type { UnitName } from './units.ts';

export type Wording = {
  /** What learners read for a measure. */
  label?: (name: string) => string | undefined;
  /** The name of the measure that is asked for. */
  asked?: string | undefined;
};

/** One or two sentences that say what an edit did, and what is wanted instead. */
export function sayEdit(edit: Edit, formula: Formula, wording: Wording): string {
  const { kind, at, about, times = 1, sign = '+', instead } = edit;
  const written = (node: Node) => formula.text.slice(node.start, node.end);
  const thing = about.kind === 'name' ? called(about.name, wording) : quote(written(about));
  const role = about.kind === 'name' ? roleOf(about.name, wording) : undefined;
  const across = acrossOf(formula, wording);
  const whole = at === formula.tree && about === at;
  switch (kind) {
    case 'left-out':
      return `You left out ${thing}. ${needed(role, across, times, sign)}`;
    case 'one-side': {
      const once = role === 'seam' || role === 'room' ? ` ${across.once}` : ' only once';
      if (sign === '-') return `You took away ${thing}${once}. ${needed(role, across, times, sign)}`;
      return `You ${role === undefined || role === 'fold' ? 'counted' : 'added'} ${thing}${once}. ${needed(role, across, times, sign)}`;
    }
    case 'alone':
      return `That is ${thing} alone. The rest of the sum is missing.`;
    case 'twice': {
      const did = sign === '-' ? 'took away' : 'added';
      if (times === 1) return `You ${did} ${thing} twice. Once is enough.`;
      if (role === 'seam' || role === 'room')
        return `You ${did} ${thing} twice ${across.each}. Once ${across.each} is enough.`;
      return `You counted ${thing} four times. Twice is enough.`;
    }
    case 'wrong-sign':
      return sign === '+' ? `You took away ${thing}. It is added here.` : `You added ${thing}. It is taken away here.`;
    case 'one-too-many':
      return edit.isCount
        ? `You counted one too many. Look again at ${thing}.`
        : `You counted ${thing} one time too many.`;
    case 'one-too-few':
      return edit.isCount
        ? `You counted one too few. Look again at ${thing}.`
        : `You counted ${thing} one time too few.`;
    case 'rounded-down':
      return `You rounded down. ${wayOf(at, written)}`;
    case 'rounded-up':
      return `You rounded up. ${wayOf(at, written)}`;
    case 'not-rounded':
      return `You did not round. ${wayOf(at, written)}`;
    case 'other-mark':
      return `You rounded to another mark. ${wayOf(at, written)}`;
    case 'rough-constant': {
      const exact = constantAt(about)?.exact ?? 0;
      return `You took ${edit.text} for ${instead}. Use more digits, such as ${exact.toFixed(4)}.`;
    }
    case 'half':
      return 'That is half of it. The whole is wanted.';
    case 'whole':
      return whole ? 'That is twice as much as is wanted.' : `You took the whole of ${thing}. Half of it is wanted.`;
    case 'brackets':
      return `You multiplied or divided ${thing} alone. The whole sum in the brackets is meant.`;
    case 'smaller-for-larger':
      return 'You took the smaller size. The larger one is wanted here.';
    case 'larger-for-smaller':
      return 'You took the larger size. The smaller one is wanted here.';
    case 'finished-for-cut':
      return whole
        ? 'That is the finished size. The cut size is asked.'
        : 'You used a finished size. The cut size belongs here.';
    case 'cut-for-finished':
      return whole
        ? 'That is the cut size. The finished size is asked.'
        : 'You used a cut size. The finished size belongs here.';
    case 'width-height': {
      const other = called(instead ?? '', wording);
      if (!whole) return `You used ${other}. The sum needs ${thing}.`;
      const meant = called(wording.asked ?? '', wording);
      return `That is ${other}. You are asked for ${meant}.`;
    }
    case 'unit':
      return 'Check the unit.';
  }
}

/** What is said when a number was right in one unit and read in another. */
export const sayUnit = (meant: UnitName, read: UnitName): string =>
  `Your number is right in ${meant}, but it was read as ${read}. Check the unit.`;

/**
 * A measure as a sentence calls it: by its label where that is a short name, or else by its own name.
 *
 * @example called('seam', { label: () => 'Seam allowance' }) // => 'the seam allowance'
 */
export function called(name: string, { label }: Wording): string {
  const shown = label?.(name);
  const short =
    shown !== undefined && /^\p{L}+(?: \p{L}+){0,2}$/u.test(shown) && !/^(?:how|what|which)\b/iu.test(shown);
  if (!short) return `the ${name}`;
  return `the ${/^\p{Lu}\p{Lu}/u.test(shown) ? shown : shown.charAt(0).toLowerCase() + shown.slice(1)}`;
}

/** What a measure does in a sum, told by the words of the trade in its name and label. */
type Role = 'seam' | 'room' | 'fold' | undefined;

function roleOf(name: string, { label }: Wording): Role {
  const words = `${name} ${label?.(name) ?? ''}`.toLowerCase();
  if (/\b(?:seams?|allowances?)\b/u.test(words)) return 'seam';
  if (/\b(?:ease|clearance|margin|room)\b/u.test(words)) return 'room';
  if (/\b(?:folds?|pleats?|tucks?|hems?|depth)\b/u.test(words)) return 'fold';
  return undefined;
}

type Across = { once: string; each: string; sewn: string; both: string };

const side = { once: 'on one side only', each: 'at each side' };
const edge = { once: 'at one edge only', each: 'at each edge' };
const ways: Record<'width' | 'height' | 'any', Across> = {
  width: { ...side, sewn: 'Both side edges are sewn.', both: 'Both sides need it.' },
  height: { ...edge, sewn: 'Top and bottom are both sewn.', both: 'Top and bottom need it.' },
  any: { ...edge, sewn: 'Both edges are sewn.', both: 'Both edges need it.' },
};

/** Which edges a sum speaks of, told by the words width and height in what it is about. */
function acrossOf({ names }: Formula, { asked }: Wording): Across {
  for (const name of [asked, ...names]) {
    if (name === undefined) continue;
    if (/\bwidth\b/u.test(name)) return ways.width;
    if (/\b(?:height|length|drop)\b/u.test(name)) return ways.height;
  }
  return ways.any;
}

function needed(role: Role, across: Across, times: number, sign: '+' | '-'): string {
  if (times === 1) return sign === '+' ? 'It is added here.' : 'It is taken away here.';
  if (times > 2) return `It is taken ${times} times.`;
  if (role === 'seam') return across.sewn;
  if (role === 'room') return across.both;
  return role === 'fold' ? 'A fold takes it twice.' : 'It counts twice.';
}

function wayOf(at: Node, written: (node: Node) => string): string {
  if (at.kind !== 'round') return '';
  const to = written(at.to);
  return at.way === 'nearest' ? `The nearest ${to} is wanted.` : `Here you round ${at.way} to ${to}.`;
}
