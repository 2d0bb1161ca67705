/**
 * Sizes of things that sewn goods hold, as published.
 *
 * `source` is the standard or the publisher. `checked` tells how far a value can be trusted: 'read', often in a copy
 * that the comment beside the source names, or 'from memory'. Width and height in mm, as the source prints them.
 */
import { closest } from '../measure/index.ts';

export type PublishedSize = {
  name: string;
  width: number;
  height: number;
  source: string;
  checked: 'read' | 'from memory';
  /** Other names people use for it, in lower case. */
  aliases: readonly string[];
};

const inches = (value: number): number => value * 25.4;

const ID = 'ISO/IEC 7810';
/** As tabulated in an encyclopedia copy (hessslslslsls.azureedge.net/wiki/ID-1_(card_size)). */
const ID_1 = ID;
/** M. Kuhn, University of Cambridge, on the USMA list (mail-archive.com, usma, msg12672). */
const ID_2_3 = ID;
/** As tabulated in an encyclopedia copy (wiki3.en-us.nina.az/ISO_216). */
const A_SERIES = 'ISO 216';
/** EUR-Lex summary l25088. */
const EURO = 'ECB Decision ECB/2003/4';
/** Table of first-series euro notes in an encyclopedia copy (liquisearch.com/euro_banknotes/specification). */
const EURO_500 = 'table of first-series euro notes';
/** Reported in Coin World 2019. */
const EUROPA = 'announcement of the European Central Bank, 2019';
/** moneyfactory.com/faq: 2.61 x 6.14 in. */
const US_NOTE = 'US Bureau of Engraving and Printing';
/** boj.or.jp/en/about/education/oshiete/money/c15.htm. */
const YEN_NOTE = 'Bank of Japan';
/** snb.ch, design of the ninth series: 70 mm high, the 100 franc note 144 mm long, 7 mm from note to note. */
const FRANC_NOTE = 'Swiss National Bank, ninth series';
/** The Bank’s text, repeated by a secondary page (gatewayhilltowns.org). */
const POUND_NOTE = 'Bank of England, polymer notes';
/** Table at paper-size.com; convertworld.com. */
const LETTER = 'ANSI/ASME Y14.1';
const LEGAL = 'table of US paper sizes at paper-size.com';
const MEMORY = 'from memory';

const size = (
  name: string,
  width: number,
  height: number,
  source: string,
  aliases: readonly string[],
  checked: PublishedSize['checked'] = 'read',
): PublishedSize => ({ name, width, height, source, checked, aliases });

/** From A0 to A7; the smaller ones are named often enough to need no standard beside them. */
const paper = (n: number, width: number, height: number) =>
  size(`ISO 216 A${n}`, width, height, A_SERIES, [`a${n}`, `iso a${n}`, `din a${n}`]);

const euro = (value: number, width: number, height: number, source = EURO) =>
  size(`euro ${value} note`, width, height, source, [
    `${value} euro`,
    `${value} euro note`,
    `${value} euro banknote`,
    `€${value}`,
    `${value} €`,
  ]);

/** The names people use for a note of a currency. */
const note = (name: string, value: number, width: number, height: number, source: string, checked?: 'from memory') =>
  size(
    `${name} ${value} note`,
    width,
    height,
    source,
    [`${value} ${name}`, `${value} ${name} note`, `${value} ${name} banknote`],
    checked ?? 'read',
  );

const envelope = (name: string, width: number, height: number) =>
  size(`ISO 269 ${name} envelope`, width, height, MEMORY, [`${name.toLowerCase()} envelope`], 'from memory');

const indexCard = (short: number, long: number) =>
  size(
    `index card ${short} × ${long} in`,
    inches(long),
    inches(short),
    MEMORY,
    [
      `${short} x ${long} index card`,
      `${short}x${long} index card`,
      `${short} by ${long} index card`,
      `index card ${short} x ${long} in`,
    ],
    'from memory',
  );

/** Published sizes, from the smallest of each kind. */
export const publishedSizes: readonly PublishedSize[] = [
  size(`${ID} ID-000`, 25, 15, ID_1, ['id-000', 'mini sim', 'mini sim card']),
  size(`${ID} ID-1`, 85.6, 53.98, ID_1, ['id-1', 'bank card', 'credit card', 'debit card', 'identity card', 'id card']),
  size(`${ID} ID-2`, 105, 74, ID_2_3, ['id-2']),
  size(`${ID} ID-3`, 125, 88, ID_2_3, ['id-3', 'passport', 'passport booklet']),
  paper(0, 841, 1189),
  paper(1, 594, 841),
  paper(2, 420, 594),
  paper(3, 297, 420),
  paper(4, 210, 297),
  paper(5, 148, 210),
  paper(6, 105, 148),
  paper(7, 74, 105),
  size('US letter paper', inches(8.5), inches(11), LETTER, [
    'us letter',
    'ansi a',
    'ansi letter',
    'letter paper',
    'letter sheet',
  ]),
  size('US legal paper', inches(8.5), inches(14), LEGAL, ['us legal', 'legal paper', 'legal sheet']),
  size('ANSI B tabloid paper', inches(11), inches(17), LETTER, ['ansi b', 'tabloid', 'tabloid paper']),
  euro(5, 120, 62),
  euro(10, 127, 67),
  euro(20, 133, 72),
  euro(50, 140, 77),
  size('euro 100 note, first series', 147, 82, EURO, ['100 euro first series', 'first series 100 euro note']),
  size('euro 200 note, first series', 153, 82, EURO, ['200 euro first series', 'first series 200 euro note']),
  euro(500, 160, 82, EURO_500),
  euro(100, 147, 77, EUROPA),
  euro(200, 153, 77, EUROPA),
  size('US banknote', inches(6.14), inches(2.61), US_NOTE, [
    'us note',
    'us bill',
    'dollar bill',
    'dollar note',
    'us dollar bill',
  ]),
  note('yen', 1000, 150, 76, YEN_NOTE),
  note('yen', 2000, 154, 76, YEN_NOTE),
  note('yen', 5000, 156, 76, YEN_NOTE),
  note('yen', 10000, 160, 76, YEN_NOTE),
  note('franc', 10, 123, 70, FRANC_NOTE),
  note('franc', 20, 130, 70, FRANC_NOTE),
  note('franc', 50, 137, 70, FRANC_NOTE),
  note('franc', 100, 144, 70, FRANC_NOTE),
  note('franc', 200, 151, 70, FRANC_NOTE),
  note('franc', 1000, 158, 70, FRANC_NOTE),
  note('pound', 5, 125, 65, POUND_NOTE),
  note('pound', 10, 132, 69, POUND_NOTE),
  note('pound', 20, 139, 73, POUND_NOTE),
  note('pound', 50, 146, 77, MEMORY, 'from memory'),
  envelope('C4', 229, 324),
  envelope('C5', 162, 229),
  envelope('C6', 114, 162),
  envelope('C7', 81, 114),
  envelope('DL', 110, 220),
  indexCard(3, 5),
  indexCard(4, 6),
  indexCard(5, 8),
];

/** Words people put round a name: an A7 card, a card to ISO/IEC 7810 ID-1. */
const FILLERS = /\b(an?|the|some|cards?|to|of|sheets?|paper|size[ds]?|format|notes?|banknotes?|standard)\b/g;

const plain = (words: string): string =>
  words.toLowerCase().replaceAll('×', 'x').replace(/[,;.]/g, ' ').replace(/\s+/g, ' ').trim();

const bare = (words: string): string => plain(words).replace(FILLERS, ' ').replace(/\s+/g, ' ').trim();

/** Every name, with and without the words round it, to its size. A longer name is looked for first. */
const byName: ReadonlyMap<string, PublishedSize> = new Map(
  publishedSizes
    .flatMap((entry) => [entry.name, ...entry.aliases].map((name) => [plain(name), entry] as const))
    .sort(([a], [b]) => b.length - a.length),
);

/**
 * The published size that some words mean, or the nearest name to suggest.
 *
 * @example
 * publishedSize('a card to ISO/IEC 7810 ID-1').size.width // => 85.6
 * publishedSize('an A77 card').suggestion // => 'ISO 216 A7'
 */
export function publishedSize(words: string): { size?: PublishedSize; suggestion?: string } {
  const text = plain(words);
  const exact = byName.get(text);
  if (exact) return { size: exact };
  // A name inside the words counts when whole: “A7” in “A7 swatch cards”, not in “A70”.
  for (const [name, size] of byName) if (holdsWhole(text, name)) return { size };
  const near = closest(bare(words), [...byName.keys()]);
  return near === undefined ? {} : { suggestion: byName.get(near)!.name };
}

function holdsWhole(text: string, name: string): boolean {
  const at = text.indexOf(name);
  if (at < 0) return false;
  const before = text[at - 1] ?? ' ';
  const after = text[at + name.length] ?? ' ';
  const partOfWord = /[\p{L}\p{N}/-]/u;
  const plural = after === 's' && !partOfWord.test(text[at + name.length + 1] ?? ' ');
  return !partOfWord.test(before) && (plural || !partOfWord.test(after));
}
