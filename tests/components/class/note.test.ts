/** A note from a teacher: text alone, from wherever the file comes. */
import { expect, test } from 'vitest';
import { readNote, toNoteFile } from '../../../components/class/note.ts';

const note = { to: 'علی\u200cرضا', course: 'pleats', day: '2030-05-01', text: 'Look again.\nSee you!' };

test('a note comes out of its file as it went in', () => {
  expect(readNote(toNoteFile(note))).toEqual({ ok: true, value: note });
});

test('signs that turn the text round and other controls stay behind', () => {
  const read = readNote(JSON.stringify({ note: 1, ...note, to: 'A\u202eda', text: '\u202eAdd\u0007it\r\nnow\u2066' }));
  expect(read).toEqual({ ok: true, value: { ...note, to: 'Ada', text: 'Add it\nnow' } });
});

test.each([
  ['nothing', ''],
  ['a hand-in', '{"hand-in":1}'],
  ['a later version', JSON.stringify({ note: 2, ...note })],
  ['a note without text', JSON.stringify({ note: 1, ...note, text: ' \u200b ' })],
  ['a text that is none', JSON.stringify({ note: 1, ...note, text: {} })],
  ['5 000 letters', JSON.stringify({ note: 1, ...note, text: 'x'.repeat(5000) })],
  ['a million signs', JSON.stringify({ note: 1, ...note }).padEnd(1_000_000)],
  ['a day that is none', JSON.stringify({ note: 1, ...note, day: '<b>' })],
])('%s is none', (_, file) => {
  expect(readNote(file)).toEqual({ ok: false, sentence: 'That is not a note from a teacher.' });
});
