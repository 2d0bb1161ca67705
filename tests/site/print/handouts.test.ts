import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { withHandouts, withTeacher } from '../../../src/site/pages/build-options.ts';
import { everything, plannedHandouts } from '../../../src/site/print/handouts.ts';
import { lessonOnPaper } from '../../../src/site/content/lesson-on-paper.ts';
import { tellNowAndThen } from '../../../src/site/print/handouts-integration.ts';
import { readContent, readCourse } from '../../../src/site/content/read-content.ts';
import { recordedIn } from '../../../src/site/pages/recorded.ts';
import { contentFolder, exchanged } from '../content-folder.ts';

test('a lesson gives its questions, what it shows and its cautions to paper', () => {
  const text = `---
title: Fold
---

## Find the *first* fold

<AskSize id="climb" of="depth + step" hint="One step higher.">

Each pocket is <Size of="depth" /> deep.
How far is it?

</AskSize>

<AskChoice id="first" right={["Mountain, [step] up"]} wrong={{"Valley": "It sinks."}}>

Which?

</AskChoice>

<AskOrder id="way" steps={["cut", "fold", "press"]}>

Order?

</AskOrder>

<AskEdge piece="flap" edges={["left"]}>

Edges?

</AskEdge>

<AskPairs id="words" terms={["ease"]} pairs={{"nap": "the pile"}}>

Match.

</AskPairs>

<Caution of="iron">

Let each fold cool.

</Caution>

<Caution>Mind the cat.</Caution>
`;
  expect(lessonOnPaper(text)).toEqual({
    questions: [
      {
        id: 'climb',
        of: 'depth + step',
        hints: ['One step higher.'],
        words: ['Each pocket is ', { size: 'depth' }, ' deep.\nHow far is it?', ' '],
      },
    ],
    picks: [
      { kind: 'choice', id: 'first', words: ['Which?', ' '], right: ['Mountain, [step] up'], wrong: ['Valley'] },
      { kind: 'order', id: 'way', words: ['Order?', ' '], steps: ['cut', 'fold', 'press'] },
      { kind: 'edges', id: 'edges of flap', words: ['Edges?', ' '], piece: 'flap', edges: ['left'] },
      { kind: 'pairs', id: 'words', words: ['Match.', ' '], pairs: { ease: '', nap: 'the pile' } },
    ],
    shows: [['Find the ', 'first', ' fold']],
    cautions: [{ of: 'iron', words: ['Let each fold cool.', ' '] }, { words: ['Mind the cat.'] }],
  });
});

test('a lesson that cannot be read has nothing for paper', () => {
  expect(lessonOnPaper('<AskSize of="seam">\n\nHow wide?\n')).toEqual({
    questions: [],
    picks: [],
    shows: [],
    cautions: [],
  });
});

test('a course without a project still has its class plan', () => {
  const root = contentFolder(exchanged('content/courses/pleats/course.yaml', 'project: folio\n', ''));
  const files = plannedHandouts(readContent(root), 'pleats', everything).map(({ file }) => file);
  expect(files).toEqual(
    ['a4-inch', 'letter-inch', 'a4-metric', 'letter-metric'].map((kind) => `pleats/${kind}/teacher/class-plan.pdf`),
  );
  expect(plannedHandouts(readContent(root), 'knots', everything)).toEqual([]);
});

test('a built site carries documents, and the teacher’s only when asked', () => {
  expect([withHandouts({}), withTeacher({})]).toEqual([true, false]);
  expect([withHandouts({ HANDOUTS: 'no' }), withTeacher({ TEACHER_PAGES: 'yes' })]).toEqual([false, true]);
});

test('of many documents a build tells now and then how far they are', () => {
  const said: string[] = [];
  const tell = tellNowAndThen((line) => said.push(line));
  for (let files = 0; files < 1200; files++) tell({ done: Math.floor(files / 60), all: 20, files, file: 'a.pdf' });
  tell({ done: 20, all: 20, files: 1200, file: '' });
  expect(said).toEqual(['500 documents, 8 of 20 courses done', '1000 documents, 16 of 20 courses done']);
});

test('a course that is read by itself has all that its documents are made from', () => {
  const root = fileURLToPath(new URL('../../..', import.meta.url));
  const content = readContent(root);
  const one = { ...everything, editions: ['inch'], papers: ['A4'] } as const;
  for (const { id } of content.courses) {
    const alone = readCourse(root, id);
    const files = (from: typeof content) => plannedHandouts(from, id, one).map(({ file }) => file);
    expect(files(alone)).toEqual(files(content));
    expect(recordedIn(alone, id)).toEqual(recordedIn(content, id));
  }
  expect(recordedIn(content).length).toBeGreaterThan(0);
});
