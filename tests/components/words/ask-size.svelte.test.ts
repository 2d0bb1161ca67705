/**
 * Questions that ask for a size. Answers worked out by hand from the swatch-card folio: room in a pocket = card width +
 * 2 ease = 4 1/4 + 2 * 1/8 = 4 1/2 in; metric 105 + 2 * 3 = 111 mm.
 */
import { beforeEach, expect, test } from 'vitest';
import { SizeQuestion } from '../../../components/words/ask-size/state.svelte.ts';
import { editionChoice } from '../../../components/page/edition.svelte.ts';
import { learner, newPage, plain } from '../lesson.ts';

const HINT = 'There is a seam at the left of the card and another at its right. Each side wants its ease.';
const ROOM = { id: 'room', of: 'card width + 2 * ease', hint: HINT };

beforeEach(() => newPage());

const room = (written: ConstructorParameters<typeof SizeQuestion>[1] = ROOM) => new SizeQuestion(learner(), written);

async function answer(asked: SizeQuestion, text: string): Promise<void> {
  asked.type(text);
  await asked.check();
}

test('a right answer is said to be right, in either unit and within the tolerance', async () => {
  const asked = room();
  for (const text of ['4 1/2', '4.5"', '11.4 cm', '4 17/32 in']) {
    await answer(asked, text);
    expect(asked.feedback, text).toContain('Right');
    expect(asked.status, text).toBe('right');
  }
});

test('a wrong answer gets a hint, a second try, and then the worked solution', async () => {
  const asked = room();
  // The card alone, and then 4 1/2 + 1/2: a slip that can be told, and a wrong answer that cannot.
  await answer(asked, '4 1/4');
  expect(asked.feedback).toMatch(/left out .*Try once more/);
  expect(asked.status).toBe('again');
  expect(asked.hints).toEqual([HINT]);
  expect(asked.solutionOffered).toBe(false);
  // The same answer again is no second try.
  await asked.check();
  expect(asked.solutionOffered).toBe(false);
  await answer(asked, '5');
  expect(asked.status).toBe('wrong');
  expect(asked.feedback).toContain('worked solution shows the way');
  expect(asked.solutionOffered).toBe(true);
  await answer(asked, '4½');
  expect(asked.status).toBe('right');
  expect(asked.hints).toEqual([]);
});

test('a slip of the ruler is told apart from a wrong idea', async () => {
  const asked = room();
  await answer(asked, '4 9/16');
  expect(asked.feedback).toContain('Very close, but a little too much. Check your rounding');
  // Panel height: without the depth, and with one step for all four, it is 2 1/4 in less. Both are named, and neither is
  // claimed.
  const height = room({ id: 'height', of: 'panel height' });
  await answer(height, '4 7/8');
  expect(height.feedback).toContain('Look again at the depth and the step.');
  // Panel width = 4 1/4 + 2 * 1/8 + 2 * 3/8 = 5 1/4 in, read off the other side of the tape: 13.3 cm.
  const panel = room({ id: 'panel', of: 'panel width' });
  await answer(panel, '13.3');
  expect(panel.feedback).toContain('centimetres');
});

test('a wrong sum that the author expects is answered in the author’s words', async () => {
  const words = 'Count the steps between the pockets, not the pockets. There is one fewer.';
  const asked = room({ id: 'tops', of: '(pockets - 1) * step', slips: { 'pockets * step': words } });
  // 5 pockets a step of 3/4 in apart: 4 steps make 3 in, 5 would make 3 3/4 in.
  await answer(asked, '3 3/4');
  expect(asked.feedback).toContain(words);
});

test('hints come one at a time and end in the sum', async () => {
  const asked = room();
  await answer(asked, '4 1/4');
  expect(asked.hints).toHaveLength(1);
  asked.nextHint();
  expect(asked.hints[1]).toContain('You need');
  asked.nextHint();
  expect(asked.hints[2]).toContain('The sum is card width + 2 × ease.');
  expect(asked.hasMoreHints).toBe(false);
});

test.each([
  { typed: '', says: /^Write your answer first\.$/ },
  { typed: '  ', says: /^Write your answer first\.$/ },
  { typed: 'wide enough', says: /is not a length/ },
  { typed: '<script>document.title = "taken"</script>', says: /is not a length/ },
  { typed: '1e400', says: /\S/ },
  { typed: '99999999999999999999', says: /more than 100 m/ },
  { typed: '0', says: /A size is more than nothing\./ },
])('“$typed” is no try and is not lost', async ({ typed, says }) => {
  const asked = room();
  await answer(asked, typed);
  expect(asked.feedback).toMatch(says);
  expect(asked.status).toBe('unread');
  expect(asked.attempt.given).toBe(typed);
  expect(asked.hints).toEqual([]);
  // The first real try is still the first.
  await answer(asked, '4');
  expect(asked.feedback).toContain('Try once more');
});

test('how many is asked for in figures, without a unit', async () => {
  // Two folds for each of five pockets.
  const asked = room({ id: 'folds', of: '2 * pockets' });
  for (const text of ['many', 'about 10']) {
    await answer(asked, text);
    expect(asked.feedback).toContain('Write how many, in figures.');
  }
  await answer(asked, '5');
  expect(asked.feedback).toContain('Try once more');
  await answer(asked, '10');
  expect(asked.status).toBe('right');
});

test('answers are kept, with what was typed but not checked, and how often it was tried', async () => {
  await answer(room(), '4 1/4');
  const panel = { id: 'panel', of: 'panel width' };
  room(panel).type('5 and a bit');

  const again = room();
  expect(again.attempt.given).toBe('4 1/4');
  expect(again.status).toBe('again');
  expect(again.feedback).toContain('left out');
  await answer(again, '5');
  expect(again.status).toBe('wrong');
  expect(room(panel).attempt.given).toBe('5 and a bit');
  expect(room(panel).status).toBe('open');
});

test('kept answers that are rubbish are as good as none', async () => {
  const key = (name: string) => `course-kit:answer:/lesson/#${name}`;
  localStorage.setItem(key('room'), '{"given":"5","tries":"many","checked":{"value":"x"}}');
  localStorage.setItem(key('panel'), '[[');
  const asked = room();
  expect(asked.attempt.given).toBe('5');
  expect(asked.status).toBe('open');
  expect(room({ id: 'panel', of: 'panel width' }).attempt.given).toBe('');
  await answer(asked, '4 1/2');
  expect(asked.status).toBe('right');
});

test('when the size changes, the answer is judged anew and the text stays', async () => {
  const mine = learner();
  const asked = new SizeQuestion(mine, ROOM);
  await answer(asked, '4 1/2');
  mine.set('card width', 5 * 25.4);
  dispatchEvent(new Event('beforeprint')); // the page follows at once
  expect(asked.status).toBe('moved');
  expect(asked.feedback).toContain('Your size changed: the answer is now different.');
  expect(asked.attempt.given).toBe('4 1/2');
  await answer(asked, '5 1/4');
  expect(asked.status).toBe('right');
});

test('in the other edition an answer that was right at that size stays right', async () => {
  const mine = learner();
  const asked = new SizeQuestion(mine, ROOM);
  // 111 mm is 4.37 in: right in millimetres alone.
  await answer(asked, '4 1/2');
  editionChoice.choose('metric');
  expect(asked.status).toBe('moved');
  expect(asked.feedback).toContain('The edition changed');
  await answer(asked, '111');
  expect(asked.status).toBe('right');
  expect(plain(asked.feedback)).toContain('111 mm');
});

test('what an option leaves out is not asked', () => {
  const mine = learner();
  const asked = new SizeQuestion(mine, { of: 'flap wide' });
  expect(asked.status).toBe('away');
  expect(asked.feedback).toContain('leaves this out');
});

test('what is said and the hint follow a size that the answer does not depend on', async () => {
  const mine = learner();
  const asked = new SizeQuestion(mine, {
    ...ROOM,
    hint: 'The cards are [card height] high.',
    slips: { 'card width': 'That is the card alone; [step] has no say.' },
  });
  await answer(asked, '4 1/4');
  expect(plain(asked.feedback)).toContain('That is the card alone; ¾ in has no say.');
  expect(asked.hints.map(plain)).toEqual(['The cards are 3 in high.']);
  mine.set('step', 25.4);
  mine.set('card height', 3.5 * 25.4);
  dispatchEvent(new Event('beforeprint')); // the page follows at once
  expect(asked.status).toBe('again');
  expect(plain(asked.feedback)).toContain('That is the card alone; 1 in has no say.');
  expect(asked.hints.map(plain)).toEqual(['The cards are 3½ in high.']);
});
