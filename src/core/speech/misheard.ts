/** Words of the trade that a machine misheard: found by their sound and their spelling, and changed when the author says so. */
import { doubleMetaphone } from 'double-metaphone';
import leven from 'leven';
import { joinLines, placeIn, type SpokenLine, type SpokenPlace, type SpokenText } from './lines.ts';
import { spokenLengths } from './lengths.ts';
import { stem } from './stems.ts';
import type { CourseWords } from './course-words.ts';

/** Where something was heard: its place, its second, and the words around it. */
export type HeardAt = { at: SpokenPlace; from: number; before: string; after: string };

/** What was heard, and the word of the course that it likely is; `sure` from 0 to 1. */
export type Mishearing = { heard: string; meant: string; sure: number; where: HeardAt[] };

/** What an author has put right once, by what was heard: { 'sole bridges': 'selvages' }. The key of every entry is in lower case. */
export type MendList = Readonly<Record<string, string>>;

/** Two words are near from here on. */
const NEAR = 0.8;

/** Words that everybody says; they are no mishearing unless what stands beside them tells so. */
const everyday = new Set(
  (
    'the be to of and a in that have i it for not on with he as you do at this but his by from they we say her she or an will my one all ' +
    'would there their what so up out if about who get which go me when make can like time no just him know take people into year your ' +
    'good some could them see other than then now look only come its over think also back after use two how our work first well way even ' +
    'new want because any these give day most us is are was were been has had did does made going here where more very much many too long ' +
    'right left top bottom side sides little big small let lets put keep hold start begin end done finish next last again once every each ' +
    'both same different another few lot lots bit thing things something anything everything nothing kind sort sure okay yes yeah hello ' +
    'welcome today thank thanks everybody everyone everywhere somewhere myself yourself itself nice pretty easy hard soft flat open close ' +
    'closed through under above below between before behind across along around down off away together apart inside outside front middle ' +
    'center centre corner corners edge edges line lines point points piece pieces part parts place mark marks cut cuts fold folds turn turns ' +
    'sew sewn press pressed iron pin pins clip clips stitch stitches needle thread machine fabric cloth cotton ruler mat scissors pocket ' +
    'pockets card cards bag number half quarter inch inches three four five six seven eight nine ten eleven twelve hundred hour minute times ' +
    'minutes second seconds week month colour color red blue green white black table room house home class course lesson really actually ' +
    'always never still already maybe almost enough quite rather real true nearly simply better best worse need needs needed should might ' +
    'must may might shall being having doing getting making taking using looking working running seeing saying telling showing leaving ' +
    'coming whats thats youre were theyre ive youve weve dont doesnt cant wont isnt arent didnt havent whole extra fine great love loved ' +
    'try tries tried trying walk walking run slow slowly fast quick quickly careful carefully tight loose heavy light thick thin wide narrow ' +
    'short tall deep high low show shows shown tell told ask asked help move moved moves pull push poke bring brought catch caught hand hands ' +
    'finger fingers foot feet eye eyes head face body water air life world name names word words please sorry course cause wrong reason ' +
    'mean means meant matter happen happens call called stay stays lay lie lies set sets sit sits stand stands stop stops wait change ' +
    'changed check feel feels find found forget remember leave leaves lost miss play read write seen scene seem seems same peace piece plate ' +
    'plates based him hymn pen pens pans lightning phasing facing placing passing basic basics past paste pasting size sizes site sight ' +
    'ready steady sample simple couple purple people trouble double single apple label table able cable stable while whether weather either ' +
    'neither rather gather father mother brother other bother fuse news views use used useful usual usually allow allows allowed alone along ' +
    'strip strips stripe stripes trip trips grip drip snap snaps map maps nap flap flaps flat slap lap cap tap gap gaps wrap sleep sleeve cover ' +
    'covers over ever never river offer order older shoulder holder folder border board bored birds word work worth worst thirst third ' +
    'thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety steam touch touches grid pinch cool cooler easier longer tired warm watch watching shorter wider safe safer later earlier less least list lean learn panel panels channel final finally family funnel tunnel ' +
    'weight weights weigh match matches matched matching stuck stick sticks sticky bend bends bent band bands bond scrap scraps packet packets basis base bases test tests ' +
    'best rest rests rescue roll rolls hole holes whole hold held hope hopes heap sheet sheets shirt shirts skirt skirts shorts curtain curtains cushion cushions ' +
    'gift gifts craft clean cleaned dream dress dresses dry dried ending grade grades great greater green grey gray ground hang hangs hung hook hooks ' +
    'leather ladder letter letters later litter light lights lit loop loops lots mark marked market master metal middle model music neat net notice noticed ' +
    'picture pictures pitch plain plan plans plastic poor pour press pretty print prints quarter quilts rate rip rips ripped ripping rib row rows rub rubber ' +
    'sand send sent shop shops shrink sing sink slide slides slip slips slow spot spots spread stand start starts state steps stiff still store story straight strange street strong such ' +
    'taste tea teach tear tears teeth ten tend tent thumb tie ties tied till tip tips tool tools tooth trace track trade train trick trim trims trust truth tube type types ' +
    'wait waits wave wavy wear wears wet wheel white wipe wish wood wool wrap wraps yarn yet zigzags'
  ).split(' '),
);

/** Everyday words that stand for a word of the trade where one of their neighbours says so. Common practice, no source. */
const inContext: readonly { heard: RegExp; meant: string; before?: RegExp; after?: RegExp }[] = [
  {
    heard: /^(?:seem|scene|seen|same|sea|theme)$/u,
    meant: 'seam',
    after: /^(?:allowance|allowances|line|lines|alliance|ripper|seam)$/u,
  },
  {
    heard: /^(?:seems|scenes)$/u,
    meant: 'seams',
    before: /^(?:side|the|both|your)$/u,
    after: /^(?:open|flat|are|together)$/u,
  },
  {
    heard: /^(?:him|hymn|ham|hymns)$/u,
    meant: 'hem',
    before: /^(?:double|rolled|the|narrow|wide|wider|deep|deeper|small|tiny|first|bottom|side|inch|a)$/u,
    after: /^(?:the|edge|edges|line|it|all|is|allowance|at|in|so|and|on|with|along)$/u,
  },
  {
    heard: /^(?:plate|plates|pleads|played|pleas)$/u,
    meant: 'pleat',
    before: /^(?:the|first|second|third|next|each|every|your|box|knife|of|all)$/u,
  },
  { heard: /^(?:peace|peas)$/u, meant: 'piece', before: /^(?:the|a|each|this|other|front|back|your|that|one)$/u },
  {
    heard: /^(?:based|paste|pasted|beast|boast|taste)$/u,
    meant: 'baste',
    before: /^(?:to|and|then|machine|hand|we|just|ill|gonna|now|you)$/u,
    after: /^(?:it|the|this|that|along|down|across|around|both|in|close|all)$/u,
  },
  {
    heard: /^(?:pasting|boasting|tasting|bathing)$/u,
    meant: 'basting',
    after: /^(?:stitch|stitches|row|it|the|along)$/u,
  },
  { heard: /^(?:write|rite|bright|wright)$/u, meant: 'right', after: /^(?:side|sides)$/u },
  { heard: /^(?:size|sighs)$/u, meant: 'sides', before: /^(?:right|wrong)$/u, after: /^(?:together|facing|out|in)$/u },
  {
    heard: /^(?:lightning|lying|lineing|aligning)$/u,
    meant: 'lining',
    before: /^(?:the|flap|your|my|front|back|a|bag|pouch)$/u,
  },
  { heard: /^(?:phasing|pacing|facin|facility)$/u, meant: 'facing', before: /^(?:the|sides|your|a|together)$/u },
  { heard: /^(?:roar|roll|row|war|role|rob)$/u, meant: 'raw', after: /^(?:edge|edges)$/u },
  { heard: /^(?:clips|lip|collapse)$/u, meant: 'clip', after: /^(?:corners|corner)$/u },
  {
    heard: /^(?:knot|not|nudge|nutch)$/u,
    meant: 'notch',
    before: /^(?:the|a|middle|center|centre)$/u,
    after: /^(?:at|in|on|mark)$/u,
  },
  {
    heard: /^(?:flat|flab|flop|black|lap)$/u,
    meant: 'flap',
    before: /^(?:the|your|my)$/u,
    after: /^(?:lining|down|interfacing|goes|is|comes)$/u,
  },
  { heard: /^(?:sip|ship|chip|zap)$/u, meant: 'zip', before: /^(?:the|your|a|closed|open)$/u },
  { heard: /^(?:presser|pressure)$/u, meant: 'presser', after: /^foot$/u },
  { heard: /^(?:bias|buyers|byas)$/u, meant: 'bias', after: /^(?:tape|binding|strip)$/u },
];

/** Several words that machines hear for one of the trade. Common practice, no source but the first, which a caption had. */
const phrases = new Map([
  ...[
    'sole bridges',
    'sell bridges',
    'salvages',
    'self edges',
    'salvage is',
    'sell the edges',
    'cell edges',
    'sell edges',
  ].map((heard) => [heard, 'selvages'] as const),
  ...['salvage', 'self edge', 'sell bridge', 'sole bridge', 'salvage edge'].map((heard) => [heard, 'selvage'] as const),
  ...['fat e', 'fat eight', 'fat ate'].map((heard) => [heard, 'fat eighth'] as const),
  ...['might her', 'my ter', 'meter corner', 'might or'].map((heard) => [heard, 'mitre'] as const),
  ...['tops stitch', 'top stick', 'tub stitch', 'stop stitch'].map((heard) => [heard, 'topstitch'] as const),
  ...['see malone', 'seem a lowance', 'seam alliance', 'seam a lounge'].map(
    (heard) => [heard, 'seam allowance'] as const,
  ),
  ...['few sable', 'few sible', 'visible interfacing', 'usable interfacing'].map(
    (heard) => [heard, heard.endsWith('facing') ? 'fusible interfacing' : 'fusible'] as const,
  ),
]);

type Target = { text: string; words: readonly string[]; joined: string; keys: readonly string[] };

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/['’]/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** Sounds that microphones mix up are one letter: b and p, t, d and th, m and n. */
const muffled: Readonly<Record<string, string>> = {
  B: 'P',
  D: 'T',
  '0': 'T',
  V: 'F',
  Z: 'S',
  X: 'S',
  J: 'S',
  G: 'K',
  M: 'N',
};

const keysOf = (joined: string): string[] =>
  [...new Set(doubleMetaphone(joined))].map((key) => [...key].map((letter) => muffled[letter] ?? letter).join(''));

function targetOf(text: string): Target {
  const words = plain(text).split(' ');
  const joined = words.join('');
  return { text, words, joined, keys: keysOf(joined) };
}

/**
 * The words that were likely misheard, each with what is likely meant and every place where it stands, the surest first. Nothing
 * is changed: what the author takes over goes into a list, and `mend` follows that.
 *
 * @param list What is mended already, and is not offered again.
 */
export function misheard(lines: readonly SpokenLine[], words: CourseWords, list: MendList = {}): Mishearing[] {
  const spoken = joinLines(lines);
  const targets = targetsOf(words);
  const known = new Set(targets.flatMap((target) => target.words.flatMap((word) => [word, stem(word)])));
  const found = new Map<string, Mishearing>();
  const add = (first: number, next: number, meant: string, sure: number): void => {
    const heard = said(spoken, first, next);
    if (heard === plain(meant) || list[heard] !== undefined) return;
    const entry = found.get(heard) ?? { heard, meant, sure, where: [] };
    if (entry.where.length === 0) found.set(heard, entry);
    if (entry.meant === meant) entry.where.push(placeOf(spoken, first, next));
  };
  const plainWords = spoken.words.map(({ text }) => plain(text));
  for (const { first, next } of wideAsWhite(spoken, plainWords)) add(first, next, 'wide', 0.85);
  const cache = new Map<string, { meant: string; sure: number } | undefined>();
  for (let i = 0; i < plainWords.length; i++) {
    if (plainWords[i] === '') continue;
    let best: { meant: string; sure: number; count: number } | undefined;
    for (let count = Math.min(3, plainWords.length - i); count > 0; count--) {
      const heard = plainWords.slice(i, i + count);
      const near =
        byPhrase(heard) ??
        byContext(plainWords, i, count) ??
        cached(cache, heard.join(' '), () => nearest(heard, targets, known));
      if (near && near.sure > (best?.sure ?? 0)) best = { ...near, count };
    }
    if (!best) continue;
    add(i, i + best.count, best.meant, best.sure);
    i += best.count - 1;
  }
  return [...found.values()].sort((a, b) => b.sure - a.sure || b.where.length - a.where.length);
}

function cached<T>(cache: Map<string, T>, key: string, make: () => T): T {
  if (!cache.has(key)) cache.set(key, make());
  return cache.get(key)!;
}

/** Terms and names of up to three words; longer ones are taken word by word. */
function targetsOf({ terms, names }: CourseWords): Target[] {
  const texts = new Set<string>();
  // Things are spoken of by twos: the ties.
  const plurals = Object.keys(names)
    .filter((name) => /[^sxhy]$/u.test(name))
    .map((name) => `${name}s`);
  for (const text of [...terms, ...Object.values(names).flat(), ...plurals]) {
    const words = plain(text).split(' ');
    if (words.length <= 3) texts.add(words.join(' '));
    for (const word of words) if (word.length > 3 && !everyday.has(word)) texts.add(word);
  }
  return [...texts].filter((text) => text.replace(/ /gu, '').length > 2).map(targetOf);
}

const byPhrase = (heard: readonly string[]): { meant: string; sure: number } | undefined => {
  const meant = phrases.get(heard.join(' '));
  return meant === undefined ? undefined : { meant, sure: 0.85 };
};

function byContext(words: readonly string[], i: number, count: number): { meant: string; sure: number } | undefined {
  if (count > 1) return undefined;
  for (const { heard, meant, before, after } of inContext) {
    if (!heard.test(words[i]!) || words[i] === meant) continue;
    if (before && !before.test(words[i - 1] ?? '')) continue;
    if (after && !after.test(words[i + 1] ?? '')) continue;
    const plural = /s$/u.test(words[i]!) && /^(?:pleat|clip)$/u.test(meant) && words[i] !== 'clips';
    return { meant: plural ? `${meant}s` : meant, sure: before && after ? 0.7 : after ? 0.8 : 0.5 };
  }
  return undefined;
}

/** “White” right behind a length, and before cloth or a strip, is wide. */
function wideAsWhite(spoken: SpokenText, words: readonly string[]): { first: number; next: number }[] {
  const ends = new Set(spokenLengths(spoken.text).map(({ end }) => end));
  return words.flatMap((word, i) => {
    if (word !== 'white' || !ends.has(spoken.words[i - 1]?.end ?? -1)) return [];
    return /^(?:fabric|cloth|strips?|by|and|piece|pieces|lining|or)$/u.test(words[i + 1] ?? '')
      ? [{ first: i, next: i + 1 }]
      : [];
  });
}

/** The nearest word of the course by sound and spelling. */
function nearest(
  heard: readonly string[],
  targets: readonly Target[],
  known: ReadonlySet<string>,
): { meant: string; sure: number } | undefined {
  const fresh = (word: string): boolean => !known.has(word) && !known.has(stem(word));
  if (heard.some((word) => /^\d/u.test(word)) || !heard.some(fresh)) return undefined;
  const joined = heard.join('');
  if (joined.length < 4) return undefined;
  // “Interfacing on”: a word of the course and one that everybody says, both heard as they are.
  const heardRight = (word: string): boolean => !fresh(word) || everyday.has(word) || word.length < 3;
  if (heard.length > 1 && heard.every(heardRight) && heard.some((word) => !fresh(word))) return undefined;
  const common = heard.every((word) => everyday.has(word) || word.length < 3);
  let keys: string[] | undefined;
  let best: { meant: string; sure: number } | undefined;
  for (const target of targets) {
    if (Math.abs(target.joined.length - joined.length) > 3) continue;
    // One word of several: the others must stand there as they are.
    if (heard.length > 1 && target.words.length === heard.length) {
      const off = target.words.map((word, k) => word !== heard[k] && stem(word) !== stem(heard[k]!));
      if (off.filter(Boolean).length !== 1) continue;
      const k = off.indexOf(true);
      if (!fresh(heard[k]!) || everyday.has(heard[k]!) || heard[k]!.length < 3) continue;
      const near = likeness(heard[k]!, keysOf(heard[k]!), target.words[k]!, keysOf(target.words[k]!));
      if (near >= 0.72 && near > (best?.sure ?? 0)) best = { meant: target.text, sure: near };
      continue;
    }
    if (heard.length > 1 && target.words.length > 1) continue;
    if (common && target.joined !== joined) continue;
    if (heard.length > 1 && (target.joined.length < 6 || heard.some((word) => stem(word) === stem(target.joined))))
      continue;
    keys ??= keysOf(joined);
    const near = likeness(joined, keys, target.joined, target.keys);
    const least = heard.length > 1 ? 0.92 : NEAR;
    if (near >= least && near > (best?.sure ?? 0)) best = { meant: target.text, sure: near };
  }
  return best && { meant: best.meant, sure: Math.round(best.sure * 100) / 100 };
}

/** How near two words are: by spelling alone, or by sound for the most part. */
function likeness(a: string, aKeys: readonly string[], b: string, bKeys: readonly string[]): number {
  const longest = Math.max(a.length, b.length);
  if (Math.abs(a.length - b.length) > 0.4 * longest) return 0;
  const spelling = 1 - leven(a, b) / longest;
  if (spelling < 0.6) return 0;
  let sound = 0;
  for (const one of aKeys)
    for (const other of bKeys) sound = Math.max(sound, 1 - leven(one, other) / Math.max(one.length, other.length, 1));
  return Math.max(spelling, 0.6 * sound + 0.4 * spelling);
}

const said = ({ words }: SpokenText, first: number, next: number): string =>
  words
    .slice(first, next)
    .map(({ text }) => plain(text))
    .join(' ');

function placeOf(spoken: SpokenText, first: number, next: number): HeardAt {
  const [from, to] = [spoken.words[first]!, spoken.words[next - 1]!];
  return {
    at: placeIn(spoken, from.start, to.end),
    from: from.from,
    before: spoken.words
      .slice(Math.max(0, first - 5), first)
      .map(({ text }) => text)
      .join(' '),
    after: spoken.words
      .slice(next, next + 5)
      .map(({ text }) => text)
      .join(' '),
  };
}

/**
 * The lines with everything put right that the list names. What goes over the end of a line is mended in the line where it
 * begins; a capital and the signs around it stay.
 *
 * @example mend([{ from: 0, to: 2, text: 'trim the sole bridges' }], { 'sole bridges': 'selvages' })[0].text
 * // => 'trim the selvages'
 */
export function mend(lines: readonly SpokenLine[], list: MendList): SpokenLine[] {
  const entries = new Map(Object.entries(list).map(([heard, meant]) => [plain(heard), meant]));
  const most = Math.max(0, ...[...entries.keys()].map((heard) => heard.split(' ').length));
  if (most === 0) return lines.map((line) => ({ ...line }));
  const spoken = joinLines(lines);
  const changes: { at: SpokenPlace; meant: string }[] = [];
  for (let i = 0; i < spoken.words.length; i++) {
    for (let count = Math.min(most, spoken.words.length - i); count > 0; count--) {
      const meant = entries.get(said(spoken, i, i + count));
      if (meant === undefined) continue;
      const [first, last] = [spoken.words[i]!, spoken.words[i + count - 1]!];
      const lead = /^[^\p{L}\p{N}]*/u.exec(first.text)![0].length;
      const trail = /[^\p{L}\p{N}]*$/u.exec(last.text)![0].length;
      const at = placeIn(spoken, first.start + lead, last.end - trail);
      const capital = /^\p{Lu}/u.test(first.text.slice(lead)) ? meant.charAt(0).toUpperCase() + meant.slice(1) : meant;
      changes.push({ at, meant: capital });
      i += count - 1;
      break;
    }
  }
  const texts = lines.map(({ text }) => text);
  for (const { at, meant } of changes.reverse()) {
    if (at.line === at.endLine) {
      texts[at.line] = texts[at.line]!.slice(0, at.start) + meant + texts[at.line]!.slice(at.end);
      continue;
    }
    texts[at.endLine] = texts[at.endLine]!.slice(at.end).trimStart();
    for (let line = at.line + 1; line < at.endLine; line++) texts[line] = '';
    texts[at.line] = texts[at.line]!.slice(0, at.start) + meant;
  }
  return lines.map((line, i) => ({ ...line, text: texts[i]! }));
}
