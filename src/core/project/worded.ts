/**
 * The formulas behind the numbers that pieces and pleats give, in the project's own names: so that a page can show the
 * sum, and a question can ask for it. A number whose sum cannot be said in names, such as one stated for both editions
 * on the spot, has none.
 */
import { formatLength } from '../measure/index.ts';
import { isRectangle } from './lines.ts';
import { partName } from './names.ts';
import type { Compiled } from './compile.ts';
import type { CompiledPiece, CompiledPleats, Edges } from './shapes.ts';
import type { Formula } from '../formula/index.ts';
import type { Part } from './names.ts';
import type { PleatPlan } from './pleats.ts';
import type { Written } from './written.ts';

/** A part of a sum in words, undefined where it cannot be said; and the same with its sign. */
type Said = string | undefined;
type Signed = [sign: '+' | '-', said: Said];

/** The formula of a part of a piece, where there is one. */
export function formulaOf(compiled: Compiled, piece: CompiledPiece, part: Part, plan?: PleatPlan): Formula | undefined {
  // The sum depends on the file alone, but for a trimmed strip, whose length is no longer the sum of its ways.
  const key = `${partName(piece.name, part)}${plan && plan.trim > 0 ? ' trimmed' : ''}`;
  if (!compiled.worded.has(key)) {
    const text = sum(compiled, piece, part, plan);
    compiled.worded.set(key, text === undefined ? undefined : compiled.formula(text));
  }
  return compiled.worded.get(key);
}

function sum(compiled: Compiled, piece: CompiledPiece, part: Part, plan?: PleatPlan): string | undefined {
  const say = (written: Written | undefined): Said => saidOf(written, compiled);
  const of = (part: Part, of = piece.name) => partName(of, part);
  const { shape, pleats } = piece;
  switch (part.what) {
    case 'width':
      return across(shape, 'width', 'left', 'right');
    case 'length':
      return pleats ? stripLength() : across(shape, 'height', 'bottom', 'top');
    case 'height':
      return pleats ? panelHeight() : join(['+', of({ what: 'length' })]);
    case 'finished width':
      return inside('width', 'left', 'right');
    case 'finished height':
      return inside('height', 'bottom', 'top');
    default:
      return pleats && plan && plan.from === 'bottom' && !pleats.folds ? pleatSum(pleats, plan, part) : undefined;
  }

  /** The cut size across, from what the file says. */
  function across(
    shape: CompiledPiece['shape'],
    what: 'width' | 'height',
    low: 'left' | 'bottom',
    high: 'right' | 'top',
  ): string | undefined {
    if (shape?.kind === 'size') return whole(say(shape[what]));
    if (shape?.kind === 'finished') return join(['+', say(shape[what])], ...both('+', piece.allowance, low, high));
    // An inset takes its own amount off both sides of a rectangle alone; of a slanting edge it takes more.
    if (shape?.kind !== 'like' || (shape.inset && !isRectangle(compiled, piece))) return undefined;
    const other = of({ what: what === 'width' ? 'width' : 'length' }, shape.piece);
    return join(['+', other], ...both('-', shape.inset, low, high));
  }

  function inside(what: 'width' | 'height', low: 'left' | 'bottom', high: 'right' | 'top'): string | undefined {
    if (shape?.kind === 'finished') return whole(say(shape[what]));
    if (shape?.kind !== 'size' && shape?.kind !== 'like') return undefined;
    if (shape.kind === 'like' && !shape.inset && !piece.allowance) return of(part, shape.piece);
    if (!isRectangle(compiled, piece)) return undefined;
    return join(['+', of({ what })], ...both('-', piece.allowance, low, high));
  }

  /** Twice the length of both edges, or each of them. */
  function both(sign: '+' | '-', edges: Edges | undefined, low: string, high: string): Signed[] {
    if (!edges) return [];
    const [first, second] = [low, high].map((name) => edges.byName.get(name) ?? edges.others);
    if (first === second) return first ? [[sign, twice(say(first))]] : [];
    return [first, second].flatMap((edge): Signed[] => (edge ? [[sign, say(edge)]] : []));
  }

  function panelHeight(): string | undefined {
    if (!pleats || pleats.folds) return undefined;
    if (pleats.height) return whole(say(pleats.height));
    if (shape?.kind === 'finished') return across(shape, 'height', 'bottom', 'top');
    if (shape?.kind === 'size' && shape.height && !pleats.head) return undefined;
    const pockets = say(pleats.pockets);
    const steps: Signed[] = pleats.step ? [['+', product(less(pockets), say(pleats.step))]] : [];
    const head: Signed[] = pleats.head ? [['+', say(pleats.head)]] : edge('top');
    return join(...upTo(pleats), ...steps, ...head);
  }

  function stripLength(): string | undefined {
    if (shape?.kind === 'size' && shape.height) return whole(say(shape.height));
    if (!pleats || pleats.folds || !plan || plan.trim > 0) return undefined;
    const [pockets, depth] = [say(pleats.pockets), say(pleats.depth)];
    const height: Signed = ['+', of({ what: 'height' })];
    if (pleats.bottoms === 'stepped') return join(height, ['+', product('2', pockets, depth)]);
    const each = pleats.step
      ? join(['+', twice(depth)], ['+', product(less(pockets), say(pleats.step))])
      : twice(depth);
    return join(height, ['+', product(pockets, each && group(each))]);
  }

  /** From the bottom raw edge to the top of pocket 1. */
  function upTo(pleats: CompiledPleats): Signed[] {
    const lift: Signed[] = pleats.lift ? [['+', say(pleats.lift)]] : [];
    return [...edge('bottom'), ...lift, ['+', say(pleats.depth)]];
  }

  function edge(name: 'bottom' | 'top'): Signed[] {
    const written = piece.allowance?.byName.get(name) ?? piece.allowance?.others;
    return written ? [['+', say(written)]] : [];
  }

  function pleatSum(pleats: CompiledPleats, plan: PleatPlan, part: Part): string | undefined {
    if (!('n' in part)) return undefined;
    const depth = say(pleats.depth);
    const step = say(pleats.step);
    const steps = (k: number): Signed[] => (k === 0 ? [] : [['+', k === 1 ? step : product(String(k), step)]]);
    const level = plan.bottoms === 'level';
    if (part.what === 'pocket top') return join(...upTo(pleats), ...steps(part.n - 1));
    if (part.what === 'pocket depth') return join(['+', depth], ...(level ? steps(part.n - 1) : []));
    if (part.n === 1) return join(...upTo(pleats));
    const before: Signed = ['+', of({ what: 'fold', n: part.n - 1 })];
    const pocket = Math.ceil(part.n / 2);
    if (level) return join(before, ['+', of({ what: 'pocket depth', n: pocket })]);
    return part.n % 2 === 0 ? join(before, ['+', depth]) : join(before, ['+', depth], ['+', step]);
  }
}

/** What needs no brackets inside a longer sum. */
const ATOMS: ReadonlySet<string> = new Set(['name', 'number', 'length', 'min', 'max']);

/** A written value as a part of a longer sum. */
function saidOf(written: Written | undefined, { grid }: Compiled): Said {
  if (!written) return undefined;
  if (written.kind === 'formula') {
    const { kind } = written.formula.tree;
    return ATOMS.has(kind) ? written.text.trim() : group(written.text.trim());
  }
  const { inch, metric } = written.stated;
  if (inch !== undefined && metric !== undefined) return undefined;
  const text = inch === undefined ? formatLength(metric!, 'metric', { grid }) : formatLength(inch, 'inch', { grid });
  return text.startsWith('≈') ? undefined : text;
}

const group = (inside: string): string => `(${inside})`;
const twice = (said: Said): Said => product('2', said);
const less = (said: Said): Said => said && group(`${said} - 1`);

function product(...factors: Said[]): Said {
  return factors.includes(undefined) ? undefined : factors.join(' * ');
}

/** Joins signed parts; the first loses its plus. Undefined when any of them cannot be said. */
function join(...parts: Signed[]): Said {
  if (parts.length === 0 || parts.some(([, said]) => said === undefined)) return undefined;
  return parts.map(([sign, said], i) => (i === 0 ? whole(said) : ` ${sign} ${said}`)).join('');
}

/** A sum that is one written value: without the brackets it would have inside a longer one. */
function whole(said: Said): Said {
  return said?.startsWith('(') && said.endsWith(')') ? said.slice(1, -1) : said;
}
