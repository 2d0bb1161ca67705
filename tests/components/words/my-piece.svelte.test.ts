/**
 * What the learner's own piece measures. Metric edition, seams of 6 mm. The facing is cut 123 by 175 mm, its seams take 6 mm; the strip,
 * folded and between its seams, measures 111 by 163 mm. Each case by hand: 2 × (8 − 6) mm less each way, one seam of
 * 6 mm more, and so on.
 */
import { beforeEach, expect, test } from 'vitest';
import { MyPieceState } from '../../../components/words/my-piece/state.svelte.ts';
import type { Learner } from '../../../components/page/learner.svelte.ts';
import type { Remedy, Subject } from '../../../src/core/index.ts';
import { folio } from '../../core/project/files.ts';
import { learner as learnerOf, newPage, plain } from '../lesson.ts';

beforeEach(() => newPage());

/** A learner of the folio with narrow seams. */
function learner(): Learner {
  const file = folio();
  return learnerOf('metric', { ...file, measures: { ...file.measures, seam: { in: '1/4', mm: 6 } } });
}

const FACING = { piece: 'facing', stage: 'cut' } as const;
const STRIP = { piece: 'pocket strip', stage: 'sewn' } as const;

const mine = (subject: Subject, by: Learner = learner()) =>
  new MyPieceState(by, subject, 'piece' in subject ? `${subject.piece} ${subject.stage}` : 'finished');

async function compare(part: MyPieceState, width: string, height: string): Promise<void> {
  part.type('width', width);
  part.type('height', height);
  await part.compare();
}

const cases: {
  piece: Subject;
  what: string;
  size: [string, string];
  verdict: string;
  says: RegExp;
  todo: RegExp[];
}[] = [
  { piece: FACING, what: 'is well', size: ['123', '175'], verdict: 'well', says: /All is well/, todo: [] },
  {
    piece: FACING,
    what: 'is well within the tolerance',
    size: ['124', '174'],
    verdict: 'well',
    says: /well/,
    todo: [],
  },
  {
    piece: FACING,
    what: 'is too wide, and can be trimmed',
    size: ['130', '175'],
    verdict: 'unexplained',
    says: /7 mm too large in width/,
    todo: [/Trim 7 mm off the width/, /card width were 112 mm/, /Cut it again, 123 mm by 175 mm/],
  },
  {
    piece: FACING,
    what: 'may have one of several mistakes',
    size: ['117', ''],
    verdict: 'ambiguous',
    says: /More than one mistake would give this size/,
    todo: [/card width were 99 mm/, /Cut it again/],
  },
  {
    piece: STRIP,
    what: 'was sewn with other seams, which can be unpicked',
    size: ['107', '159'],
    verdict: 'explained',
    says: /seams of 8 mm\. The pattern has 6 mm/,
    todo: [/unpick it/, /card width were 101 mm/, /Cut it again/],
  },
  {
    piece: STRIP,
    what: 'lacks a seam, which can be sewn',
    size: ['117', '163'],
    verdict: 'explained',
    says: /seam at one side seems to be missing/,
    todo: [/Sew again inside the first seam/, /card width were 111 mm/, /Cut it again/],
  },
  {
    piece: STRIP,
    what: 'has a fold off its line, which can be folded again',
    size: ['111', '171'],
    verdict: 'explained',
    says: /One fold seems to lie 4 mm off its line/,
    todo: [/Press the folds out/, /card height were 82 mm/, /Cut it again/],
  },
  {
    piece: FACING,
    what: 'was read off the wrong side of the tape',
    size: ['12.3 in', '17.5 in'],
    verdict: 'explained',
    says: /inch|centimetre/,
    todo: [/Measure once more before you change anything/],
  },
];

test.each(cases)('a piece of $size $what', async ({ piece, size, verdict, says, todo }) => {
  const part = mine(piece);
  await compare(part, ...size);
  expect(part.trouble).toBeUndefined();
  expect(part.reading?.verdict).toBe(verdict);
  expect(plain(part.reading?.sentence)).toMatch(says);
  expect(part.reading?.remedies.map(({ sentence }) => plain(sentence))).toEqual(
    todo.map((text) => expect.stringMatching(text)),
  );
});

test('nothing written, and what is no size, is answered kindly and kept', async () => {
  const part = mine(FACING);
  await compare(part, '', '');
  expect(part.trouble?.sentence).toContain('Write what you measured');
  await compare(part, '123', 'about so');
  expect(part.trouble).toMatchObject({ way: 'height' });
  expect(part.typed).toEqual({ width: '123', height: 'about so' });
  await compare(part, '0', '');
  expect(part.trouble).toEqual({ way: 'width', sentence: 'A size is more than nothing.' });
  await compare(part, '123', '');
  expect(part.reading?.verdict).toBe('well');
});

test('one mistake explains both ways, and how well it does', async () => {
  const part = mine(FACING);
  // Cut at its finished size: two seams of 6 mm less each way.
  await compare(part, '111 mm', '163');
  expect(part.reading?.sentence).toContain('cut at its finished size');
  expect(part.fit(part.reading!.explanations[0]!)).toBe('width exactly, height exactly');
  expect(plain(part.off(-12))).toBe('12 mm too small');
});

const carryOn = ({ reading }: MyPieceState) =>
  reading!.remedies.find((remedy): remedy is Extract<Remedy, { kind: 'carry-on' }> => remedy.kind === 'carry-on')!;

test('carrying on lists what is to be cut otherwise from now on', async () => {
  const part = mine(STRIP);
  // 6 mm wider between its seams, so that the pieces that go with it are cut 129 mm wide, and not 123 mm.
  await compare(part, '117', '163');
  const sizes = carryOn(part).changes.map(({ label, to }) => [label, to]);
  expect(sizes).toContainEqual(['Cover', { width: 129, height: 175 }]);
  expect(sizes).toContainEqual(['Facing behind the pockets', { width: 129, height: 175 }]);
  // The strip itself is cut already.
  expect(sizes.map(([label]) => label)).not.toContain('Pocket strip');
});

test('carrying on shows the whole page for the work as it is', async () => {
  const by = learner();
  const part = mine(FACING, by);
  await compare(part, '118', '');
  const other = mine(FACING, by);
  await compare(other, '119', '');
  part.carryOn(carryOn(part));
  expect(by.settledPattern.measures['panel width']?.value).toBeCloseTo(118, 6);
  expect(part.isShown(carryOn(part))).toBe(true);
  // Another piece that came out otherwise is not what the page shows.
  expect(other.isShown(carryOn(other))).toBe(false);
  part.backToPlan();
  expect(by.settledPattern.measures['panel width']?.value).toBe(123);
  expect(part.isShown(carryOn(part))).toBe(false);
});

test('what was measured is kept, and compared again', async () => {
  await compare(mine(FACING), '118', '100');
  const again = mine(FACING);
  expect(again.typed).toEqual({ width: '118', height: '100' });
  await expect.poll(() => again.reading?.verdict).toBeDefined();
});
