/** Hand-ins as files and codes with something changed in them: read whole, or refused in a sentence; and what is read is safe. */
import { deflateRawSync } from 'node:zlib';
import { codesIn } from '../../components/class/codes.ts';
import { toCsv, whatWasMeasured, whatWentWrong, whoIsWhere } from '../../components/class/class.ts';
import { cleanName, LONGEST_NAME } from '../../components/class/names.ts';
import { readHandIn, toCode, toFile } from '../../components/class/wire.ts';
import type { CourseLesson, HandIn } from '../../components/class/hand-in.ts';
import type { Chance } from './chance.ts';
import { count, family, SLIP } from './family.ts';
import { mutated, ODD, piecesOf } from './texts.ts';

const lesson: CourseLesson = {
  id: 'fold',
  title: 'Fold',
  url: 'courses/pleats/fold/',
  path: '/courses/pleats/fold/',
  project: 'folio',
  sections: 3,
  steps: ['pleat'],
  questions: [{ name: 'strip', words: 'How long?' }],
  practices: [{ name: 'again', words: 'And now?', rounds: 2 }],
  pieces: [{ name: 'cut', words: 'strip, cut' }],
};
const NAMES = ['Ada', 'علی\u200cرضا', 'María', '李', '👩🏽‍🏭', "O'Neil", '=1+1', '<b>', ' ', '\u202e', 'क्\u200dष', ...ODD];
const SLIPS = [
  'near',
  'other',
  'half',
  'one-side seam',
  'own 3',
  'left-out card width',
  '=HYPERLINK("x")',
  'own x',
  '__proto__',
  ...ODD,
];
const VALUES = [
  '0',
  '-1',
  '1e99',
  'null',
  '[]',
  '{}',
  '"x"',
  'true',
  '999',
  '1000',
  '1.5',
  '{"__proto__":{}}',
  '"\\ud800"',
  '[[[[',
];

const handInFrom = (from: Chance): HandIn => ({
  name: from.often(0.6) ? from.of(NAMES) : piecesOf(from, NAMES, 8),
  course: from.of(['pleats', 'x', '__proto__', '=1']),
  day: from.often(0.8) ? '2030-05-01' : from.of(['2030-02-31', '2030-13-01', '0000-00-00', '2028-02-29', 'today']),
  lessons: Array.from({ length: from.below(3) }, () => ({
    lesson: from.of(['fold', 'fold', 'x', '__proto__', 'constructor']),
    sections: from.often(0.8) ? from.below(4) : from.of([999, 1000, -1, 0.5, NaN]),
    sewn: from.below(3),
    answers: Array.from({ length: from.below(3) }, () => ({
      name: from.of(['strip', 'strip', '__proto__']),
      tries: from.below(4),
      right: from.often(0.5),
      atOnce: from.often(0.5),
      slips: Array.from({ length: from.below(3) }, () => from.of(SLIPS)),
    })),
    ...(from.often(0.3) && {
      practised: [{ name: 'again', exercises: from.below(9), atOnce: 0, done: true, slips: [from.of(SLIPS)] }],
    }),
    ...(from.often(0.3) && {
      measured: [{ name: 'cut', verdict: 'explained' as const, mistakes: ['unit', from.of(SLIPS)] }],
    }),
  })),
});
const codeOf = (text: string): string => `SEW1.${deflateRawSync(text).toString('base64url')}`;
const came = new Map<string, number>();

export const handIns = family<string>(
  {
    name: 'hand-ins',
    makes: (from) => {
      const file = JSON.stringify({ 'hand-in': 1, ...handInFrom(from) });
      const text = from.often(0.5) ? file : mutated(file.replaceAll(',', ',\n'), from, VALUES);
      const code = from.often(0.4) ? codeOf(text) : text;
      if (from.often(0.005)) return codeOf('['.repeat(from.below(2_000_000)));
      return from.often(0.15) ? mutated(code, from, VALUES) : code;
    },
    async broken(text) {
      codesIn(text);
      const read = await readHandIn(text);
      if (!read.ok) {
        count(came, read.sentence);
        return read.sentence === '' || SLIP.test(read.sentence) ? [`says “${read.sentence}”`] : [];
      }
      count(came, 'read');
      const { value } = read;
      const lines: string[] = [];
      const { name } = value;
      if (name === '' || name !== cleanName(name) || name.length > LONGEST_NAME)
        lines.push(`the name is ${JSON.stringify(name)}`);
      if (/[\p{Cc}\p{Cs}\u202a-\u202e\u2066-\u2069]/u.test(name))
        lines.push(`the name turns the text: ${JSON.stringify(name)}`);
      for (const again of [await readHandIn(toFile(value)), await readHandIn(await toCode(value))])
        if (!again.ok || JSON.stringify(again.value) !== JSON.stringify(value))
          lines.push('reads otherwise when it is read again');
      const shown = [
        whoIsWhere([value], [lesson]),
        whatWentWrong([value], [lesson]),
        whatWasMeasured([value], [lesson]),
      ];
      const slips = shown.slice(1).flatMap((all) => JSON.stringify(all));
      if (slips.some((one) => /HYPERLINK|<b>/u.test(one))) lines.push('a slip of nobody is shown');
      const table = toCsv([value], [lesson]);
      if (/(?:^|,)"[^"']*HYPERLINK/u.test(table)) lines.push('a formula stands in the table');
      return lines;
    },
    tells: (text) => text,
  },
  came,
);
