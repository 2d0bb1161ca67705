/** What a page keeps where the browser's storage fails: nothing throws, nothing of others is lost, what was not saved is said. */
import { isSaved, load, save, asRecord } from '../../components/page/storage.ts';
import { replaceSaved, savedEntries } from '../../components/page/saved-entries.ts';
import { onPage, type Fault, type Kept } from './browser.ts';
import { count, family } from './family.ts';
import { ODD } from './texts.ts';
import { faultFrom } from './progress.ts';

const KEYS = ['theme', 'steps:folio', 'answer:/a/#x', '__proto__', 'size:\u202e', ''];
const VALUES: unknown[] = [undefined, null, 0, true, [], {}, { a: 1 }, 'x', ...ODD, 'y'.repeat(300)];

type Deed = {
  does: 'save' | 'load' | 'replace' | 'list';
  key: string;
  value: unknown;
  fault: Fault | undefined;
  rubbish?: string;
};
const came = new Map<string, number>();

export const storage = family<Deed[]>(
  {
    name: 'storage',
    makes: (from) =>
      Array.from({ length: 1 + from.below(8) }, (): Deed => ({
        does: from.of(['save', 'save', 'load', 'replace', 'list'] as const),
        key: from.of(KEYS),
        value: from.of(VALUES),
        fault: from.often(0.5)
          ? undefined
          : from.often(0.3)
            ? { kind: 'vanishes', call: 1 + from.below(6) }
            : faultFrom(from),
        ...(from.often(0.1) && { rubbish: from.of(['', '{', 'x', '\u0000', '1e']) }),
      })),
    broken(deeds) {
      const kept: Kept = { entries: new Map([['of another program', 'x']]), fault: undefined, calls: 0 };
      return deeds.flatMap((deed) => done(deed, kept));
    },
  },
  came,
);

function done({ does, key, value, fault, rubbish }: Deed, kept: Kept): string[] {
  const lines: string[] = [];
  if (rubbish !== undefined) kept.entries.set(`course-kit:${key}`, rubbish);
  const before = JSON.stringify([...kept.entries].toSorted());
  Object.assign(kept, { fault, calls: 0 });
  if (does === 'save') {
    const trouble = onPage(kept, () => save(key, value));
    count(came, `saved: ${trouble ?? 'yes'}`);
    const now = kept.entries.get(`course-kit:${key}`);
    const wanted = value === undefined ? undefined : JSON.stringify(value);
    if (trouble === undefined && now !== wanted) lines.push(`says that it saved ${wanted}, and keeps ${now}`);
    if (trouble !== undefined && fault?.kind !== 'vanishes' && JSON.stringify([...kept.entries].toSorted()) !== before)
      lines.push('says that it did not save, and changed what was there');
  } else if (does === 'load') {
    onPage(kept, () => load(key, asRecord) ?? isSaved(key));
  } else if (does === 'list') onPage(kept, savedEntries);
  else {
    const entries = new Map([[key, JSON.stringify(value ?? null)]]);
    const trouble = onPage(kept, () => replaceSaved(entries));
    count(came, `replaced: ${trouble ?? 'yes'}`);
    if (
      trouble === undefined &&
      kept.entries.get(`course-kit:${key}`) !== entries.get(key) &&
      fault?.kind !== 'vanishes'
    )
      lines.push('says that it replaced all, and did not');
    if (trouble !== undefined && fault?.kind !== 'vanishes' && JSON.stringify([...kept.entries].toSorted()) !== before)
      lines.push(`${trouble}: nothing should have changed, and ${before} became ${JSON.stringify([...kept.entries])}`);
  }
  // Another page's clearing takes what others kept as well.
  if (fault?.kind === 'vanishes') kept.entries.set('of another program', 'x');
  if (kept.entries.get('of another program') !== 'x') lines.push('took away what another program kept');
  kept.fault = undefined;
  return lines;
}
