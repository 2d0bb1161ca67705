/** Steps of a draft project: what a sentence tells for sure as a step, and what it leaves open as a question. */
import {
  CERTAIN,
  heardVerbs,
  saidByTheWay,
  sidesSaid,
  verbNamed,
  type SpokenLength,
  type VerbName,
} from '../core/index.ts';

/** A step as the file will have it, its fields in order: a name, a list of names, or a size as it is written. */
export type SaidStep = Readonly<Record<string, string | readonly string[]>>;

/**
 * What a sentence tells of a step. It is one where the verb, what it is done to and all that it cannot do without were
 * heard; `asks` is what the author must look at beside. Otherwise `asks` is what is missing.
 */
export type Told =
  | { sure: true; verb: VerbName; step: SaidStep; asks: string[] }
  | { sure: false; verb: VerbName; piece: string | undefined; asks: string };

export type SentenceOf = {
  text: string;
  /** What can be taken here, by name. */
  pieces: readonly string[];
  /** The lengths that are said in it, in order, each as the file writes it. */
  lengths: readonly { said: SpokenLength; written: string }[];
  /** Sizes that are said right behind it, before anything else is named: they may belong to it. */
  behind: readonly SpokenLength[];
};

/** “Under” and “to the wrong side” tell where a fold comes to lie. */
const UNDER = /\b(?:under|wrong side|to the (?:back|inside))\b/iu;
const ALL_ROUND = /\b(?:all (?:the way )?(?:round|around)|all four|four sides|every (?:side|edge))\b/iu;
const FROM_EDGE = /^\W*(?:in |away |up |down )?(?:from|off|inside|close to)\b/iu;
/** Words of work. A sentence without any tells of what lies where, and asks for nothing. */
const WORK =
  /\b(?:fold|press|baste|sew|stitch|topstitch|edgestitch|turn|fuse|attach|trim|clip|hem|pleat|gather|bind|join|lay|put|tuck|grade|box|quilt|slip|thread|cut)\b/iu;

/** The step that a sentence tells; undefined where it tells of none. */
export function stepSaid({ text, pieces, lengths, behind }: SentenceOf): Told | undefined {
  const heard = heardVerbs(text);
  const verb = heard[0];
  if (verb === undefined || !WORK.test(text)) return undefined;
  const named = namedIn(text, pieces);
  // “It” may be anything: only what is named in the sentence itself is sure.
  const piece = named[0];
  const ask = (asks: string): Told => ({ sure: false, verb, piece, asks });
  if (saidByTheWay(text)) return ask('Is it done here, or only spoken of?');
  if (verb === 'press') return ask('Is more done than this pressing?');
  if (heard.length > 1) return ask(`Is it ${heard.map((one) => `“${one}”`).join(' or ')}?`);
  const left = [...named];
  const sizes = lengths.filter(({ said }) => said.values.length === 1 && said.kind !== 'range');
  const sides = [...sidesSaid(text)];
  const step: Record<string, string | readonly string[]> = {};
  const open: string[] = [];
  for (const [name, field] of Object.entries(verbNamed(verb).fields)) {
    const must = field.optional !== true;
    switch (field.kind) {
      case 'work': {
        const next = must || left.length > 0 ? left.shift() : undefined;
        if (next !== undefined) step[name] = next;
        else if (must) return ask(name === verb ? 'Which piece is it done to?' : `What is “${name}”?`);
        break;
      }
      case 'works': {
        if (!must) break;
        const least = field.least ?? 1;
        if (left.length < least) return ask('Which pieces are they?');
        step[name] = left.splice(0, least);
        break;
      }
      case 'length': {
        if (must || isSaid(name, text, sizes, step)) {
          const next = sizes.shift();
          if (!next) return ask('By how much?');
          step[name] = next.written;
          if (next.said.sure < CERTAIN || next.said.kind === 'about') open.push(`Is “${next.said.text}” right?`);
        }
        break;
      }
      case 'edges': {
        if (sides.length > 0) step[name] = sides.length === 1 ? sides[0]! : sides;
        else if (ALL_ROUND.test(text)) {
          if (must) step[name] = 'all';
        } else if (must) return ask('At which side?');
        else if (verb !== 'sew round') open.push('At which side? Left out, at all of them.');
        break;
      }
      case 'choice': {
        const meant = field.words.filter((word) => sides.includes(word));
        if (name === 'from' && field.words.includes('top')) {
          if (meant.length === 1) step[name] = meant[0]!;
          else open.push('From which side? Left out, from the top.');
        } else if (field.words.includes('under') && UNDER.test(text)) step[name] = 'under';
        else if (must) return ask(`Which is it, ${field.words.join(' or ')}?`);
        break;
      }
      default:
        if (must) return ask(`What is “${name}”?`);
    }
  }
  if (left.length > 0) return ask(`And the ${left.join(' and the ')}?`);
  // A size that no field took may be part of what is done.
  const sized = [...sizes.map(({ said }) => said.text), ...behind.map((size) => size.text)];
  if (sized.length > 0) open.push(`What is ${[...new Set(sized)].map((size) => `“${size}”`).join(', ')}?`);
  return { sure: true, verb, step, asks: open };
}

/** Whether a sentence names a piece and something to do: another step begins with it. */
export const beginsAnew = (text: string, pieces: readonly string[]): boolean =>
  namedIn(text, pieces).length > 0 && heardVerbs(text).length > 0;

/** Whether a size that may be left out is said: a row from the edge, a second turn. */
function isSaid(
  name: string,
  text: string,
  sizes: SentenceOf['lengths'],
  step: Readonly<Record<string, unknown>>,
): boolean {
  const next = sizes[0];
  if (!next) return false;
  const behind = text.slice(text.indexOf(next.said.text) + next.said.text.length);
  if (name === 'by') return FROM_EDGE.test(behind);
  if (name === 'seam')
    return /^\W*(?:seams?\b|seam allowance)/iu.test(behind) || /\bseam (?:allowance )?of\b/iu.test(text);
  return name === 'then' && step['fold'] !== undefined;
}

/** The pieces a sentence names, in order; of “pocket lining” and “lining” the longer. */
function namedIn(text: string, pieces: readonly string[]): string[] {
  const found = new Map<number, string>();
  const words = text.toLowerCase();
  for (const piece of [...pieces].sort((a, b) => b.length - a.length)) {
    const escaped = piece.replace(/[.*+?^${}()|[\]\\]/gu, String.raw`\$&`);
    const at = new RegExp(String.raw`\b${escaped}s?\b`, 'u').exec(words)?.index;
    if (at === undefined) continue;
    if ([...found].some(([start, name]) => at >= start && at < start + name.length)) continue;
    found.set(at, piece);
  }
  return [...found].sort(([a], [b]) => a - b).map(([, piece]) => piece);
}
