/** What is said at the table, cut into sentences: machines write no full stops, and people say so where one belongs. */
import { capital } from '../measure/index.ts';
import { joinLines, type SpokenLine, type SpokenText, type SpokenWord } from './lines.ts';

/** A sentence, tidied up, with the seconds it is said from and to and the places of its words in the joined text. */
export type SpokenSentence = { from: number; to: number; text: string; start: number; end: number };

/** A pause between two lines, in seconds, that ends a sentence. */
const PAUSE = 1.6;

/** From how many words on a sentence may be cut in its middle, where nobody says a turn: a machine may hear none. */
const LONG = 28;

/** A stretch of words, first and behind the last, and how it begins. */
export type Clause = { first: number; next: number; turn: 'strong' | 'weak' | 'none' };

const plain = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
const bare = ({ text }: SpokenWord): string => plain(text);

/** Right after “so” these begin a new sentence; after any other word “so” tells what something is for. */
const afterSo = new Set(
  (
    'now then next first once were well ill lets we im youre what here heres go take grab start were whats i after when ' +
    'again thats thatll to by if make put turn fold pin sew cut press'
  ).split(' '),
);

/** How a sentence begins at a word; `none` where it does not. */
function turnAt(words: readonly SpokenWord[], i: number): Clause['turn'] {
  const [before, word, after, third] = [i - 1, i, i + 1, i + 2].map((k) => (words[k] ? bare(words[k]) : ''));
  const ended = i > 0 && /[.?!]["”’)]?$/u.test(words[i - 1]!.text);
  const [here, last] = [words[i]!, words[i - 1]];
  const paused = last !== undefined && here.from - last.to >= PAUSE;
  // “It’s an inch long now”, and then nothing for a while.
  const then = words[i + 1];
  if (word === 'now' && !paused && !ended && then !== undefined && then.from - here.to >= PAUSE) return 'none';
  const strong = turnWord(paused || ended ? '' : before!, word!, after!, third!);
  if (strong) return strong;
  return ended || paused ? 'weak' : 'none';
}

/** A number behind “then” goes on with what was said: a quarter and then a half. */
const COUNTED = /^(?:an?|another|half|quarter|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\d.*)$/u;
const PART =
  /^(?:half|quarters?|eighths?|eights?|third|inch|inches|and|by|point|cm|mm|mil|centimetres?|millimetres?|\d.*)$/u;

function turnWord(before: string, word: string, after: string, third: string): Clause['turn'] | undefined {
  if (/^(?:then|so)$/u.test(word) && COUNTED.test(after) && PART.test(third)) return undefined;
  if (word === 'and' && after === 'then' && COUNTED.test(third)) return undefined;
  switch (word) {
    case 'now':
      return /^(?:right|for|until|by|from|just|till|up|to|and|so|okay|ok|but|here|even|its|thats|is|are|be|youve|wide|long|high|tall|deep|thick)$/u.test(
        before,
      ) || after === 'than'
        ? undefined
        : 'strong';
    case 'then':
      return /^(?:and|since|until|by|so|now|but|back|even|okay|ok)$/u.test(before) ? undefined : 'strong';
    case 'next':
      if (before === 'and' || before === 'so' || before === 'okay' || after === 'to') return undefined;
      return /^(?:the|your|each|this|my|our|very|its|whats|come|comes)$/u.test(before) ? undefined : 'strong';
    case 'okay':
    case 'ok':
    case 'alright':
    case 'finally':
    case 'lastly':
      // Is everybody okay with that.
      if (/^(?:with|if|for|to|because)$/u.test(after)) return undefined;
      return /^(?:is|be|its|thats|look|looks|are|and|everybody|everyone)$/u.test(before) ? undefined : 'strong';
    case 'right':
      return /^(?:so|now|then|okay|lets|well|next)$/u.test(after) &&
        !/^(?:the|your|on|to|at|left|and|top|bottom|its|is|far|all|that|just|a|from|it|looks?)$/u.test(before)
        ? 'strong'
        : undefined;
    case 'all':
      return after === 'right' && before !== 'is' ? 'strong' : undefined;
    case 'once':
      return /^(?:more|again|or|and|an?|i|who|in|upon|every|when|was|had|made)$/u.test(after) ||
        /^(?:at|all|and|just|only|it|them)$/u.test(before)
        ? undefined
        : 'strong';
    case 'after':
      return /^(?:that|this|youve|weve|ive|youre)$/u.test(after) && before !== 'and' ? 'strong' : undefined;
    case 'when':
      return /^(?:thats|youre|youve|weve|that)$/u.test(after) && before !== 'and' ? 'weak' : undefined;
    case 'first':
      return /^(?:were|we|ill|i|off|of|thing|up|take|lets|youll)$/u.test(after) &&
        !/^(?:the|your|my|and|so|okay)$/u.test(before)
        ? 'strong'
        : undefined;
    case 'step':
      return /^(?:one|two|three|four|five|six|seven|eight|nine|ten|number|\d+)$/u.test(after) &&
        !/^(?:in|of|the|this|and|so|from|by|to)$/u.test(before)
        ? 'strong'
        : undefined;
    case 'so':
      if (/^(?:or|and|do|did|is|are|its|not|ever|even|just|how|why|okay|ok|alright|right|far)$/u.test(before))
        return undefined;
      // So I don’t burn myself: what it is for.
      if (after === 'i' && /^(?:dont|cant|can|know|could|wont|wouldnt)$/u.test(third)) return undefined;
      return afterSo.has(after) ? 'strong' : undefined;
    case 'and':
      if (after === 'so' && afterSo.has(third)) return 'strong';
      return /^(?:then|now|next|finally|lastly)$/u.test(after) ||
        (after === 'once' && third !== 'more' && third !== 'again') ||
        (after === 'after' && third === 'that')
        ? 'strong'
        : undefined;
    case 'is':
    case 'has':
    case 'does':
      return /^(?:everybody|everyone|anybody|anyone)$/u.test(after) ? 'weak' : undefined;
    case 'oh':
      return /^(?:and|let|by|yes|before|i)$/u.test(after) ? 'strong' : undefined;
    case 'let':
    case 'lets':
      return /^(?:me|go|start|move|do|get)$/u.test(after) && !/^(?:and|so|now|then|okay|oh|just|ok|to)$/u.test(before)
        ? 'weak'
        : undefined;
    case 'but':
      return /^(?:first|before|now|i|you|we|if|dont)$/u.test(after) ? 'weak' : undefined;
    default:
      return undefined;
  }
}

/** Cuts the words at the turns people use, at full stops and at pauses. Every word lies in one clause. */
export function clausesOf({ words }: SpokenText): Clause[] {
  const clauses: Clause[] = [];
  let first = 0;
  let turn: Clause['turn'] = 'strong';
  for (let i = 1; i < words.length; i++) {
    const here = turnAt(words, i);
    if (here === 'none') continue;
    // “Okay so now” is one beginning, and “once that is done, then” another.
    const opened = /^(?:once|when|after)$/u.test(bare(words[first]!));
    if (i - first < (opened ? 5 : 3) && here !== 'weak' && !/[.?!]$/u.test(words[i - 1]!.text)) {
      turn = 'strong';
      continue;
    }
    clauses.push({ first, next: i, turn });
    [first, turn] = [i, here];
  }
  if (words.length > first) clauses.push({ first, next: words.length, turn });
  return clauses;
}

const fillers = new Set('um uh er erm uhm hmm mm uhh umm ah eh'.split(' '));
const fillerPairs = new Set([
  'you know',
  'i mean',
  'kind of',
  'sort of',
  'i guess',
  'if you like',
  'you see',
  'lets say',
]);
const openers = new Set('okay ok alright so well right and but then anyway yeah yes now oh'.split(' '));
/** These open a sentence as well, where another opener follows: good, so today. */
const praise = new Set('good great lovely perfect brilliant fine cool'.split(' '));

/**
 * The spoken words cut into sentences: at the turns people use (now, then, next, once that is done, so), at full stops where
 * there are some, and at pauses. What fills a pause is dropped (um, you know, a word said twice), a capital and a full
 * stop are set; nothing else is changed.
 *
 * @example sentences([{ from: 0, to: 6, text: 'so um fold the the strip now press it' }]).map(({ text }) => text)
 * // => ['Fold the strip.', 'Now press it.']
 */
export function sentences(lines: readonly SpokenLine[]): SpokenSentence[] {
  const spoken = joinLines(lines);
  return clausesOf(spoken)
    .flatMap((clause) => shorter(spoken.words, clause))
    .flatMap(({ first, next }) => {
      const words = spoken.words.slice(first, next);
      const text = tidied(words);
      if (text === '') return [];
      return { from: words[0]!.from, to: words.at(-1)!.to, text, start: words[0]!.start, end: words.at(-1)!.end };
    });
}

/** A very long clause is cut before an “and” that begins something of its own. */
function shorter(words: readonly SpokenWord[], clause: Clause): Clause[] {
  const { first, next } = clause;
  if (next - first <= LONG) return [clause];
  const middle = (first + next) / 2;
  let best = -1;
  let kind = 3;
  for (let i = first + 6; i < next - 5; i++) {
    const here = begins(bare(words[i - 1]!), bare(words[i]!), bare(words[i + 1]!));
    if (here === undefined || here > kind) continue;
    if (here < kind || Math.abs(i - middle) < Math.abs(best - middle)) [best, kind] = [i, here];
  }
  if (best < 0) return [clause];
  return [...shorter(words, { ...clause, next: best }), ...shorter(words, { first: best, next, turn: 'none' })];
}

/** Behind these nothing of its own begins: that it, so you, when I. */
const bound =
  /^(?:that|so|when|if|where|which|what|how|why|who|because|cause|until|while|as|than|like|and|or|but|before|after|once|since|whether|think|know|say|says|said|see|sure|way|thing|time|one|to|of|in|on|at|for|with|from|by|the|a|an|is|are|was|it|you|i|we|they|if|then|now|mean|guess|hope|think|make|let|lets|ones|whatever|whenever|week|today|last|wherever|everything|all|every|each|bit|place|the|this|these|those|my|your|our)$/u;

/**
 * Whether something of its own may begin at a word, where nobody said a turn: 0 most surely, an “and” with what is done
 * next; then who or what is spoken of, behind a word that does not bind it.
 */
function begins(before: string, word: string, after: string): number | undefined {
  if (word === 'and' || word === 'but')
    return /^(?:youre|were|im|you|we|i|it|this|that|thats|its|theyre|they|if|make|put|turn|fold|pin|sew|stitch|cut|press|just|give|go|take|bring|then|dont|be|do|keep|use|lay|start|stop|please)$/u.test(
      after,
    )
      ? 0
      : undefined;
  if (bound.test(before)) return undefined;
  if (/^(?:theres|mine|somebody|someone|please|careful|anyway)$/u.test(word)) return 1;
  // A pocket that’s seven inches square: said of the pocket.
  if (word === 'thats') return /^(?:where|why|how|it|all|what|because|the)$/u.test(after) ? 1 : undefined;
  if (word === 'its' || word === 'this') return word === 'its' || after === 'is' ? 1 : undefined;
  if (/^(?:make|be)$/u.test(word)) return /^(?:sure|careful)$/u.test(after) ? 1 : undefined;
  if (word === 'right') return /^(?:all|the|so|then)$/u.test(after) ? 1 : undefined;
  if (word === 'it') return /^(?:should|will|might|has|goes|looks|gives|makes)$/u.test(after) ? 1 : undefined;
  if (word === 'so') return /^(?:the|its|thats|there|this|were)$/u.test(after) ? 1 : undefined;
  return /^(?:i|im|ive|ill|you|youre|youll|we|were|well|they|theyre|if|dont)$/u.test(word) ? 2 : undefined;
}

/** Words as a sentence. Empty where nothing is left. */
function tidied(words: readonly SpokenWord[]): string {
  const kept: string[] = [];
  for (let i = 0; i < words.length; i++) {
    const word = bare(words[i]!);
    if (word === '' && !/[^\s.,;:!?'’-]/u.test(words[i]!.text)) continue;
    if (fillers.has(word)) continue;
    if (i + 1 < words.length && fillerPairs.has(`${word} ${bare(words[i + 1]!)}`) && !meant(words, i)) {
      i++;
      continue;
    }
    const last = kept.at(-1);
    if (
      last !== undefined &&
      /^\p{L}+$/u.test(word) &&
      plain(last) === word &&
      !/^(?:had|that|very|really|bye|by|it)$/u.test(word)
    )
      continue;
    kept.push(words[i]!.text);
  }
  while (
    kept.length > 1 &&
    openers.has(plain(kept[0]!)) &&
    ((plain(kept[0]!) !== 'now' && plain(kept[0]!) !== 'then') || openers.has(plain(kept[1]!)))
  ) {
    // “So now” and “and then” keep their second word.
    if (
      plain(kept[0]!) === 'right' &&
      !openers.has(plain(kept[1]!)) &&
      /^(?:sides?|side|edge|hand|side)$/u.test(plain(kept[1]!))
    )
      break;
    kept.shift();
  }
  if (kept.length > 2 && praise.has(plain(kept[0]!)) && openers.has(plain(kept[1]!))) kept.splice(0, 2);
  while (kept.length > 0 && /^(?:and|so|but|or|okay|um)[.,]?$/iu.test(kept.at(-1)!)) kept.pop();
  if (kept.length === 0 || (kept.length === 1 && openers.has(plain(kept[0]!)))) return '';
  let text = kept
    .join(' ')
    .replace(/\bi\b(?=$|[\s'’])/gu, 'I')
    .replace(/\b(?:mon|tues|wednes|thurs|fri|satur|sun)days?\b/gu, capital)
    .replace(/[,;:–-]+$/u, '')
    .trim();
  if (!/[.?!…]["”’)]?$/u.test(text)) text += ASKED.test(text) ? '?' : '.';
  return capital(text);
}

/** How a question begins that is said by itself. */
const ASKED =
  /^(?:(?:can|does|did|are) (?:you|that|this|it|everybody|everyone|anybody|anyone|we|they)|(?:is|has) (?:that|this|everybody|everyone|anybody|anyone))\b|^(?:how|what)['’]?s? (?:is|are|do|does|about|everyone|everybody)\b/iu;

/** “What kind of thread” and “if you know” say something. */
function meant(words: readonly SpokenWord[], i: number): boolean {
  const before = i > 0 ? bare(words[i - 1]!) : '';
  const pair = `${bare(words[i]!)} ${bare(words[i + 1]!)}`;
  if (pair === 'kind of' || pair === 'sort of')
    return /^(?:a|any|what|this|that|the|some|which|same|each|every|one|no|your)$/u.test(before);
  if (pair === 'you know') return /^(?:if|do|did|as|when|once|until|let|what|that|so|before|than)$/u.test(before);
  return pair === 'you see' && /^(?:can|what|as|if|where|that|when|do|until|what)$/u.test(before);
}
