/** The page of a class as its teacher uses it: rows, one learner, one question, and what the browser keeps. */
import { flushSync, mount, unmount } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import Class from '../../../components/class/Class.svelte';
import { ClassBook } from '../../../components/class/class-book.svelte.ts';
import type { AnswerRecord, Course, HandIn } from '../../../components/class/hand-in.ts';
import { asHandIn } from '../../../components/class/wire.ts';
import { provideProject } from '../../../components/page/learner.svelte.ts';
import { folio, shelf } from '../../core/project/files.ts';

provideProject({ id: 'folio', file: folio(), materials: shelf(), edition: 'inch' });

const of = 'card width + 2 * ease';
const course: Course = {
  id: 'x',
  title: 'Pockets',
  lessons: [
    {
      ...{ id: 'size', title: 'Size', url: 'courses/x/size/', path: '/courses/x/size/', project: 'folio', sections: 2 },
      steps: ['cut', 'fuse'],
      questions: [{ name: 'room', words: 'How wide is a pocket?', asked: { kind: 'sum', of: [of] } }],
      practices: [{ name: 'again', words: 'And now?', rounds: 3, asked: { kind: 'sum', of: [of] } }],
      pieces: [{ name: 'facing cut', words: 'facing, cut' }],
    },
  ],
};
/** 4 1/4 in, without the ease, where 4 1/2 in is right. */
const wrong: AnswerRecord = {
  ...{ name: 'room', tries: 2, right: false, atOnce: false, slips: ['left-out ease'], slip: 'left-out ease' },
  ...{ value: 107.95, wanted: 114.3, edition: 'inch' },
};
const handIn = (name: string, answers: AnswerRecord[] = [wrong], day = '2030-05-01'): HandIn => ({
  ...{ name, course: 'x', day },
  lessons: [{ lesson: 'size', sections: 1, sewn: 1, answers }],
});
const read = (...all: HandIn[]) =>
  all.map((value) => ({ from: value.name, read: { ok: true as const, value: asHandIn(value)! } }));

let page: ReturnType<typeof mount> | undefined;
async function show(): Promise<HTMLElement> {
  document.body.replaceChildren();
  page = mount(Class, { target: document.body, props: { course, edition: 'inch' } });
  flushSync();
  await vi.waitFor(() => expect(document.querySelector('table')).not.toBeNull(), 20_000);
  return document.body;
}
const button = (name: string): HTMLButtonElement => {
  const found = [...document.querySelectorAll('button')].find(
    (one) => one.textContent.replace(/[▲▼]/u, '').trim() === name,
  );
  if (!found) throw new Error(`There is no button ${name}.`);
  return found;
};
async function press(name: string): Promise<void> {
  button(name).click();
  flushSync();
  await Promise.resolve();
  flushSync();
}
const headings = () =>
  [...document.querySelectorAll('h2, h3')].map((one) => one.textContent.replace(/\s+/gu, ' ').trim());

beforeEach(() => localStorage.clear());
afterEach(async () => {
  if (page) await unmount(page);
  page = undefined;
  vi.restoreAllMocks();
});

test('a class that nobody has handed in is at rest', () => {
  // What looks at its own changes never ends, and throws.
  page = mount(Class, { target: document.body, props: { course, edition: 'inch' } });
  expect(() => flushSync()).not.toThrow();
  expect(document.querySelector('table')).toBeNull();
});

test('what was kept is shown: one row for each, one learner, one question, a note, and cleared', async () => {
  const book = new ClassBook('x');
  await book.take(read(handIn('Mira'), handIn('علی\u200cرضا'), handIn('Ben')));
  const { changes } = await book.take(read(handIn('MIRA', [{ ...wrong, right: true, value: 114.3 }], '2030-05-02')));
  expect(changes).toEqual([{ name: 'MIRA', words: 'handed in again: 1 now right.' }]);
  const body = await show();
  expect(headings()).toContain('Who needs help first');
  const names = () =>
    [...body.querySelectorAll('[aria-label="Table of learners"] tbody th bdi')].map((one) => one.textContent);
  expect(names().toSorted()).toEqual(['Ben', 'MIRA', 'علی\u200cرضا'].toSorted());
  expect(body.textContent).toMatch(/Take the ease into the sum\./);
  expect(body.textContent).toMatch(/You left out the ease\./);

  await press('Ben');
  expect(headings()[1]).toBe('Ben');
  expect(document.activeElement?.textContent).toBe('Ben');
  expect(body.textContent).toMatch(/4¼|4 1⁄4/u);
  expect(body.textContent).toContain('Not right yet, 2 tries.');
  const field = document.querySelector<HTMLTextAreaElement>('section textarea[dir="auto"]')!;
  field.value = 'Look at the ease.';
  field.dispatchEvent(new Event('input', { bubbles: true }));
  flushSync();
  expect(JSON.stringify({ ...localStorage })).toContain('Look at the ease.');
  await press('Back to the class');

  await press('How wide is a pocket?');
  expect(headings().some((one) => /^You left out the ease\..*\(2\)$/u.test(one))).toBe(true);
  expect(headings()).toContain('Wrong at first, right now (1)');
  await press('Back to the class');

  await press('Clear this class …');
  await press('Clear this class');
  expect(body.textContent).toContain('Everything about this class is cleared from this browser.');
  expect({ ...localStorage }).toEqual({});
});

test('sorting turns the rows, and says so', async () => {
  await new ClassBook('x').take(read(handIn('Ada', []), handIn('Ben', [{ ...wrong, right: true }])));
  const body = await show();
  const first = () => body.querySelector('[aria-label="Table of learners"] tbody th bdi')?.textContent;
  const head = () => button('Questions right').closest('th')?.getAttribute('aria-sort');
  button('Questions right').click();
  flushSync();
  expect([first(), head()]).toEqual(['Ada', 'ascending']);
  button('Questions right').click();
  flushSync();
  expect(first()).toBe('Ben');
});

test('two tabs lose nothing of each other, and a full browser says so and keeps what it had', async () => {
  const [one, other] = [new ClassBook('x'), new ClassBook('x')];
  await one.take(read(handIn('Ada')));
  await other.take(read(handIn('Ben')));
  await one.take(read(handIn('Cleo')));
  expect(one.learners.map(({ key }) => key)).toEqual(['ada', 'ben', 'cleo']);
  vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
    throw new DOMException('no room', 'QuotaExceededError');
  });
  await one.take(read(handIn('Dora')));
  expect(one.trouble).toBe('full');
  expect(one.learners).toHaveLength(4);
  vi.restoreAllMocks();
  const after = new ClassBook('x');
  await after.take([]);
  expect(after.learners.map(({ key }) => key)).toEqual(['ada', 'ben', 'cleo']);
});

test('what lies in storage and is none of it is passed over, and another site’s class stays', async () => {
  await new ClassBook('x').take(read(handIn('Ada')));
  localStorage.setItem('course-kit-class:x:rubbish', '{"handIn":{"name":"<b>"}}');
  localStorage.setItem('course-kit-class:x:torn', '{"handIn":');
  localStorage.setItem('course-kit-class:y:ben', 'kept');
  const book = new ClassBook('x');
  await book.take([]);
  expect(book.learners.map(({ key }) => key)).toEqual(['ada']);
  expect(book.clear()).toBe(true);
  expect({ ...localStorage }).toEqual({ 'course-kit-class:y:ben': 'kept' });
});

test('an older file, the same once more and one of another course are left out with a reason', async () => {
  const book = new ClassBook('x');
  await book.take(read(handIn('Ada', [], '2030-05-03')));
  const { taken, refused } = await book.take([
    ...read(handIn('ada', [], '2030-05-01'), handIn('Ada', [], '2030-05-03'), { ...handIn('Ben'), course: 'y' }),
    { from: 'x.json', read: { ok: false, sentence: 'It is not a hand-in.' } },
  ]);
  expect(taken).toBe(0);
  expect(refused.map(({ fault }) => fault).toSorted()).toEqual([
    'It belongs to another course.',
    'It is here already.',
    'It is not a hand-in.',
    'It is older than what is here of that name, from 2030-05-03.',
  ]);
});
