/** Progress that is put back from a file: all of it, or nothing is changed. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { clear, progressFile, restore } from '../../../components/class/progress.ts';

const all = () => Object.fromEntries(Object.entries({ ...localStorage }).toSorted());
const fileOf = (kept: string) => `{"progress":1,"kept":${kept}}`;

/** A browser with room for so many signs. */
function roomFor(most: number): void {
  const set = Object.getOwnPropertyDescriptor(Storage.prototype, 'setItem')!.value as (
    key: string,
    text: string,
  ) => void;
  vi.spyOn(Storage.prototype, 'setItem').mockImplementation((key, text) => {
    const size = Object.entries({ ...localStorage, [key]: text }).join('').length;
    if (size > most) throw new DOMException('no room', 'QuotaExceededError');
    set.call(localStorage, key, text);
  });
}

beforeEach(() => {
  localStorage.clear();
  localStorage.setItem('course-kit:steps:folio', '{"hem":true}');
  localStorage.setItem('course-kit:theme', '"dark"');
  localStorage.setItem('of another program', 'x');
});
afterEach(() => void vi.restoreAllMocks());

test('it comes back as it was saved, and what is kept now goes', () => {
  const file = progressFile();
  localStorage.setItem('course-kit:edition', '"metric"');
  localStorage.setItem('course-kit:theme', '"light"');
  expect(restore(file)).toEqual({ ok: true, sentence: 'Your progress is back.' });
  expect(all()).toEqual({
    'course-kit:steps:folio': '{"hem":true}',
    'course-kit:theme': '"dark"',
    'of another program': 'x',
  });
});

test.each([
  ['an empty file', ''],
  ['a file without progress', fileOf('{}')],
  ['a file of things that this site does not know', fileOf('{"__proto__":"1","constructor":"{}","score":"9"}')],
  ['another file', '{"hand-in":1}'],
  ['half a file', '{"progress":1,"kept":{"theme":"\\"li'],
  ['a list', fileOf('["theme"]')],
  ['an entry that is no text', fileOf('{"theme":{}}')],
  ['an entry that is not JSON', fileOf('{"edition":"\\"inch\\"","theme":"light"}')],
  ['an entry of 20 000 signs', fileOf(JSON.stringify({ theme: JSON.stringify('x'.repeat(20_000)) }))],
  ['two million signs', fileOf('{}').padEnd(2_000_000)],
])('%s changes nothing, and that is said', (_, text) => {
  const before = all();
  const { ok, sentence } = restore(text);
  expect(ok).toBe(false);
  expect(sentence).toContain('Nothing was changed.');
  expect(all()).toEqual(before);
});

test('what the site does not know is passed over, and that is said', () => {
  const text = fileOf('{"__proto__":"{\\"x\\":1}","score":"9","theme":"\\"light\\""}');
  expect(restore(text)).toEqual({
    ok: true,
    sentence: 'Your progress is back. What this site does not know was left out.',
  });
  expect(all()).toEqual({ 'course-kit:theme': '"light"', 'of another program': 'x' });
  expect(({} as { x?: number }).x).toBeUndefined();
});

test('a browser that has room for half of it keeps what was there', () => {
  const before = all();
  roomFor(160);
  const kept = { 'steps:folio': '{"turn":true}', 'answer:/a/#x': JSON.stringify('x'.repeat(100)), edition: '"inch"' };
  expect(restore(fileOf(JSON.stringify(kept)))).toEqual({
    ok: false,
    sentence: 'The progress in that file could not be kept: your browser has no room left. Nothing was changed.',
  });
  expect(all()).toEqual(before);
});

test('where texts of other lengths stand in the place of what was there, it all comes back', () => {
  localStorage.setItem('course-kit:steps:folio', JSON.stringify('x'.repeat(100)));
  localStorage.setItem('course-kit:edition', '"inch"');
  const before = all();
  roomFor(Object.entries(before).join('').length);
  const kept = { 'steps:folio': '1', edition: JSON.stringify('y'.repeat(90)), theme: JSON.stringify('z'.repeat(90)) };
  expect(restore(fileOf(JSON.stringify(kept))).ok).toBe(false);
  expect(all()).toEqual(before);
});

test('a browser without room for both makes room for the new', () => {
  localStorage.setItem('course-kit:steps:folio', JSON.stringify('x'.repeat(100)));
  roomFor(240);
  const text = JSON.stringify('y'.repeat(100));
  expect(restore(fileOf(JSON.stringify({ 'answer:/a/#x': text })))).toEqual({
    ok: true,
    sentence: 'Your progress is back.',
  });
  expect(all()).toEqual({ 'course-kit:answer:/a/#x': text, 'of another program': 'x' });
});

test('a browser that lets nothing be kept keeps what was there', () => {
  const before = all();
  vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
    throw new DOMException('forbidden', 'SecurityError');
  });
  expect(restore(fileOf('{"edition":"\\"inch\\""}'))).toEqual({
    ok: false,
    sentence: expect.stringContaining('your browser does not let the page keep anything. Nothing was changed.'),
  });
  expect(all()).toEqual(before);
});

test('storage that cannot be looked into is said, and clearing says so too', () => {
  vi.spyOn(globalThis, 'localStorage', 'get').mockImplementation(() => {
    throw new DOMException('forbidden', 'SecurityError');
  });
  expect(restore(fileOf('{"edition":"\\"inch\\""}')).ok).toBe(false);
  expect(clear().sentence).toBe(
    'It could not be cleared: your browser does not let the page keep anything. Nothing was changed.',
  );
  vi.restoreAllMocks();
  expect(clear()).toEqual({ ok: true, sentence: 'Everything is cleared.' });
  expect(all()).toEqual({ 'of another program': 'x' });
});
