/** Progress put back from files with something changed in them: all of it, or nothing is changed; and nothing of others. */
import { clear, progressFile, restore } from '../../components/class/progress.ts';
import { onPage, type Fault, type Kept } from './browser.ts';
import type { Chance } from './chance.ts';
import { count, family, SLIP } from './family.ts';
import { mutated, ODD } from './texts.ts';

const SITE = 'course-kit:';
const KEYS = [
  ...[
    'theme',
    'edition',
    'steps:folio',
    'size:folio',
    'answer:/a/#x',
    'read:/a/',
    'class:pleats',
    '__proto__',
    'constructor',
  ],
  ...['score', 'steps:', 'answer:\u0000', 'course-kit:theme', '', ...ODD],
];
const TEXTS = [
  '"dark"',
  '{"hem":true}',
  '[1]',
  '1',
  'null',
  'x',
  '',
  '{"a":',
  '"\\ud800"',
  '{"__proto__":{"a":1}}',
  ...ODD,
];

type Case = { kept: Kept; text: string };

/** A storage with something of this site and something of another. */
const keptFrom = (from: Chance): Map<string, string> =>
  new Map([
    ['of another program', 'x'],
    ...Array.from({ length: from.below(5) }, (): [string, string] => [
      `${SITE}${from.of(['theme', 'edition', 'steps:folio', 'steps:pouch', 'read:/a/', 'answer:/a/#x'])}`,
      from.of(['"dark"', '{"hem":true}', JSON.stringify('x'.repeat(from.below(60)))]),
    ]),
  ]);

export const faultFrom = (from: Chance): Fault | undefined =>
  from.of<Fault | undefined>([
    undefined,
    { kind: 'full', room: from.below(400) },
    { kind: 'forbidden' },
    { kind: 'once', call: 1 + from.below(20), writes: from.often(0.7) },
  ]);

function fileFrom(from: Chance): string {
  const entries = Array.from({ length: from.below(5) }, () => [
    from.often(0.7) ? from.of(KEYS.slice(0, 7)) : from.of(KEYS),
    from.often(0.85)
      ? from.of([...TEXTS.slice(0, 4), JSON.stringify('y'.repeat(from.below(200)))])
      : from.of([...TEXTS, 'x'.repeat(20_000)]),
  ]);
  const file = JSON.stringify({ progress: 1, kept: Object.fromEntries(entries) as object });
  return from.often(0.4) ? mutated(file.replaceAll(',', ',\n'), from, ['0', '{}', '[]', 'null', '""', '2']) : file;
}
const came = new Map<string, number>();

export const progress = family<Case>(
  {
    name: 'progress',
    makes: (from) => ({ text: fileFrom(from), kept: { entries: keptFrom(from), fault: faultFrom(from), calls: 0 } }),
    broken({ text, kept }) {
      const before = new Map(kept.entries);
      const wantsClear = text.length % 7 === 0;
      const { ok, sentence } = onPage(kept, () => (wantsClear ? clear() : restore(text)));
      count(came, `${kept.fault?.kind ?? 'sound'}: ${ok ? 'put back' : 'refused'}`);
      const lines = sentence === '' || SLIP.test(sentence) ? [`says “${sentence}”`] : [];
      if (kept.entries.get('of another program') !== 'x') lines.push('took away what another program kept');
      const list = (all: ReadonlyMap<string, string>) => JSON.stringify([...all].toSorted());
      if (!ok) {
        if (!sentence.includes('Nothing was changed.'))
          lines.push(`does not say that nothing was changed: ${sentence}`);
        if (list(before) !== list(kept.entries)) lines.push(`changed ${list(before)} to ${list(kept.entries)}`);
        return lines;
      }
      if (wantsClear) return kept.entries.size === 1 ? lines : [...lines, `left ${list(kept.entries)}`];
      const asked = (JSON.parse(text) as { kept: Record<string, string> }).kept;
      for (const [key, one] of kept.entries)
        if (
          key.startsWith(SITE) &&
          (!Object.hasOwn(asked, key.slice(SITE.length)) || asked[key.slice(SITE.length)] !== one)
        )
          lines.push(`keeps ${key}, which the file does not say`);
      // What is saved and put back is the same.
      kept.fault = undefined;
      const after = list(kept.entries);
      const again = onPage(kept, () => restore(progressFile()));
      if (!again.ok || list(kept.entries) !== after)
        lines.push(`does not come back as it was saved: ${again.sentence}`);
      return lines;
    },
    tells: ({ text, kept }) => JSON.stringify({ text, entries: [...kept.entries], fault: kept.fault }),
  },
  came,
);
