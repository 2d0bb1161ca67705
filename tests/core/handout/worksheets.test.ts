import { describe, expect, it } from 'vitest';
import { answerKey, evaluate, exercisesFor, resolveProject, usualSizes, worksheet } from '../../../src/core/index.ts';
import { parse } from 'yaml';
import { ProjectFile } from '../../../src/core/index.ts';
import type { Edition, Handout, PickQuestion } from '../../../src/core/index.ts';
import { numbersSentence } from '../../../src/core/handout/worksheet.ts';
import { lessonOnPaper } from '../../../src/site/content/lesson-on-paper.ts';
import type { LessonEntry } from '../../../src/site/content/read-content.ts';
import { content, projectNamed } from './documents.ts';

const words = ({ pages }: Handout): string =>
  pages.flatMap(({ scene }) => scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []))).join(' ');

const editions: Edition[] = ['inch', 'metric'];
const cases = content.lessons.flatMap((lesson) => editions.map((edition) => [lesson.slug, edition, lesson] as const));

/** The project a lesson is about. */
const projectOf = ({ value, course }: LessonEntry): ProjectFile =>
  projectNamed((value?.project ?? content.courses.find(({ id }) => id === course)?.value?.project)!);

describe.each(cases)('the sheets of %s, %s edition', (name, edition, entry) => {
  const { questions } = lessonOnPaper(entry.text);
  const project = projectOf(entry);
  const resolve = (values: Record<string, number>) =>
    resolveProject(project, { edition, values, materials: content.materials.value ?? {} });
  const exercises = exercisesFor(questions, resolve, 'A');
  const lesson = { name, title: name };
  const seeds = [1, 2, 3].map((sheet) => ({ series: 'A', sheet }));
  const setting = { paper: 'A4' } as const;

  it('hold every question that is worked out', () => {
    expect(exercises.tasks(1).length).toBeGreaterThan(3);
    expect(exercises.tasks(1).length).toBeLessThanOrEqual(questions.length);
  });

  it('differ from neighbour to neighbour in every answer', () => {
    expect(exercises.varied).toBe(true);
    for (let sheet = 1; sheet < 14; sheet++) {
      const [here, beside] = [exercises.tasks(sheet), exercises.tasks(sheet + 1)];
      here.forEach((task, i) => expect(task.sum.wanted.value).not.toBe(beside[i]!.sum.wanted.value));
    }
  });

  it('are the same for the same seed, and others for another', () => {
    const wanted = (series: string) =>
      exercisesFor(questions, resolve, series)
        .tasks(2)
        .map(({ sum }) => sum.wanted.value);
    expect(wanted('A')).toEqual(exercises.tasks(2).map(({ sum }) => sum.wanted.value));
    expect(wanted('B')).not.toEqual(wanted('A'));
  });

  it('say their seed and their numbers, and the key answers them', () => {
    const sheet = words(worksheet(lesson, exercises, seeds, resolve({}), setting));
    const key = words(answerKey(lesson, exercises, seeds, resolve({}), setting));
    for (const { series, sheet: n } of seeds) {
      expect(sheet).toContain(`Sheet ${series}-${n}`);
      expect(key).toContain(`${series}-${n}`);
    }
    // The key's answer is what the sum of the sheet's own numbers comes to.
    for (const { sum } of exercises.tasks(1)) {
      const again = evaluate(sum.formula, sum.scope);
      expect(again.ok && again.value.value).toBeCloseTo(sum.wanted.value, 9);
    }
  });

  it('give the numbers of the sum, and never its result', () => {
    for (let n = 1; n <= 6; n++) {
      for (const task of exercises.tasks(n)) {
        const given = numbersSentence(task);
        for (const used of task.sum.formula.names) expect(given).toContain(used);
        if (task.sum.asked !== undefined) expect(task.sum.formula.names).not.toContain(task.sum.asked);
      }
    }
  });
});

it('questions without a sum stand on every sheet, mixed anew, and their answers in the key', () => {
  const resolve = (values: Record<string, number>) =>
    resolveProject(projectNamed('swatch-folio'), { edition: 'metric', values });
  const pattern = resolve({});
  const sizes = usualSizes(
    { piece: 'facing', stage: 'cut' },
    { file: projectNamed('swatch-folio'), settings: { edition: 'metric' } },
  );
  const facing = sizes ? { sizes } : {};
  const picks: PickQuestion[] = [
    { kind: 'choice', id: 'a', words: ['How far is a step?'], right: ['It is [step].'], wrong: ['It is [2 * step].'] },
    { kind: 'order', id: 'b', words: ['In which order?'], steps: ['fuse', 'mark', 'fold', 'press', 'baste'] },
    { kind: 'edges', id: 'c', words: ['Which edges are sewn?'], piece: 'flap', edges: ['left', 'right'] },
    { kind: 'edges', id: 'd', words: ['Of a piece that is left out?'], piece: 'none' },
    { kind: 'pairs', id: 'e', words: ['What is what?'], pairs: { ease: 'room inside', nap: 'the pile' } },
    { kind: 'folds', id: 'f', words: ['Where is fold 2?'], piece: 'pocket strip', fold: { fold: 2 } },
    { kind: 'side', id: 'g', words: ['Where is lining?'], step: 'turn-folio', side: 'front', shows: 'flap lining' },
    { kind: 'guess', id: 'h', words: ['How much?'], guesses: ['By [seam]', 'By [2 * seam]'], shows: 'By [2 * seam].' },
    { kind: 'piece', id: 'i', words: ['Measure it.'], subject: { piece: 'facing', stage: 'cut' }, ...facing },
    { kind: 'piece', id: 'j', words: ['Of a piece that is left out.'], subject: { piece: 'none', stage: 'cut' } },
  ];
  const lesson = { name: 'picks', title: 'Picks', picks };
  const seeds = [1, 2].map((sheet) => ({ series: 'A', sheet }));
  const made = [worksheet, answerKey].map((make) =>
    words(make(lesson, exercisesFor([], resolve, 'A'), seeds, pattern, { paper: 'A4' })),
  );
  const [sheets = '', key = ''] = made;
  // The step of the metric edition is 20 mm.
  for (const text of [
    '1. How far is a step?',
    'It is 20\u202fmm.',
    'It is 40\u202fmm.',
    '4. What is what?',
    'ease ____',
    '5. Where is fold 2?',
    'Tick one line. Sizes are from the bottom raw edge.',
    '6. Where is lining?',
    'By 10\u202fmm',
    '8. My piece measures: Facing behind the pockets, cut. Measure it.',
    'It should measure It measures',
  ])
    expect(sheets.replace(/ +/g, ' ')).toContain(text);
  expect(sheets).not.toContain('left out');
  // Each sheet shows the steps in an order of its own.
  const orders = sheets.split('Sheet A-2').map((sheet) => [...sheet.matchAll(/____\s+(\w+)/g)].map(([, step]) => step));
  expect(orders[0]).not.toEqual(orders[1]);
  for (const text of ['It is 20\u202fmm.', '1. fuse', '5. baste', 'Right Left', 'nap: the pile'])
    expect(key).toContain(text);
  // Fold 2 lies at 10 + 6 + 55 + 55 = 126 mm. The facing is 131 mm wide; cut at its finished size, 2 × 10 mm less.
  for (const text of ['B, 126\u202fmm', '1, across the top', 'By 20\u202fmm.', 'Width: 131\u202fmm', '111\u202fmm'])
    expect(key).toContain(text);
  expect(sheets).not.toContain('123\u202fmm');
  expect(key).not.toContain('40');
});

it.each(editions)('a set of practice stands there three times, with other numbers each time, %s edition', (edition) => {
  const entry = content.lessons.find(({ slug }) => slug === 'size-the-panel')!;
  const resolve = (values: Record<string, number>) => resolveProject(projectOf(entry), { edition, values });
  const exercises = exercisesFor(lessonOnPaper(entry.text).questions, resolve, 'A');
  for (let sheet = 1; sheet <= 6; sheet++) {
    const rounds = exercises.tasks(sheet).filter(({ asked }) => asked.id.startsWith('practice '));
    expect(rounds).toHaveLength(3);
    for (const { asked, sum, pattern } of rounds) {
      // By hand: card width + 2 × ease + 2 × seam.
      const mm = (name: string) => pattern.measures[name]!.value;
      expect(asked.of).toBe('panel width');
      expect(sum.wanted.value).toBeCloseTo(mm('card width') + 2 * mm('ease') + 2 * mm('seam'), 9);
    }
    const [first, second, third] = rounds.map(({ sum }) => sum.wanted.value);
    expect(first).not.toBe(second);
    expect(second).not.toBe(third);
  }
});

it('the key of the demo’s panel is the sum done by hand', () => {
  // card width + 2 × ease + 2 × seam, with the numbers that sheet A-1 prints.
  const entry = content.lessons.find(({ slug }) => slug === 'size-the-panel')!;
  const { questions } = lessonOnPaper(entry.text);
  const project = projectOf(entry);
  const resolve = (values: Record<string, number>) => resolveProject(project, { edition: 'metric', values });
  const [task] = exercisesFor(questions, resolve, 'A')
    .tasks(1)
    .filter(({ asked }) => asked.of === 'panel width');
  const value = (name: string) => task!.pattern.measures[name]!.value;
  expect(task!.sum.wanted.value).toBe(value('card width') + 2 * value('ease') + 2 * value('seam'));
});

describe('questions that have no sum to work out', () => {
  const yoke = ProjectFile.parse(
    parse(`
title: Yoke
measures: { seam: { in: 1/4, mm: 6 }, depth: { in: 4, mm: 100, between: { in: [3, 5], mm: [80, 120] } } }
pieces:
  yoke: { outline: [[0, 0], [8, 0], [6, depth], [2, depth]], allowance: seam }
  tab: { size: [2 in, depth] }
options: { tab: { adds: [tab] } }
`),
  );
  const resolve = (values: Record<string, number>) => resolveProject(yoke, { edition: 'metric', values });
  const text = `
<AskSize of="yoke finished width">How wide is the yoke between its seams?</AskSize>
<AskSize of="depth">How deep is it?</AskSize>
<AskSize of="tab width + collar">How wide is what is not there?</AskSize>
<AskSize of="2 * depth">How deep are two?</AskSize>
<AskEdge piece="tab">Which edges of the tab?</AskEdge>
`;
  const { questions, picks } = lessonOnPaper(text);
  const seeds = [1, 2].map((sheet) => ({ series: 'A', sheet }));
  const exercises = exercisesFor(questions, resolve, 'A');
  const [sheets = '', key = ''] = [worksheet, answerKey].map((make) =>
    words(make({ name: 'yoke', title: 'Yoke', picks }, exercises, seeds, resolve({}), { paper: 'A4' })).replace(
      / +/g,
      ' ',
    ),
  );

  it('ask for the width of an outlined piece, which is measured on its template', () => {
    for (const asked of ['1. How wide is the yoke between its seams?', '2. How deep are two?'])
      expect(sheets.split(asked)).toHaveLength(3);
    expect(sheets).toContain('Measure it on the template, printed at true scale: ');
    // From the outline: 8 in, which is 203.2 mm; it goes to the nearest mark of the metric ruler.
    expect(key).toMatch(/Measure it on the template.* On every sheet: =\s203\smm/u);
    expect(sheets).not.toMatch(/203\smm/u);
  });

  it('say what stands on the page alone, and why', () => {
    expect(sheets.split('3 more questions stand on the lesson’s page alone.')).toHaveLength(3);
    expect(key).toContain('How deep is it? A sheet would have to print the answer.');
    expect(key).toContain('How wide is what is not there? The project as it is printed has no such thing.');
    expect(key).toContain('Which edges of the tab? The project as it is printed has no such thing.');
  });
});

it('what an author says to a slip stands in the key, with dots for the sizes that each sheet has its own of', () => {
  const text = `<AskSize of="card width + 2 * ease" slips={{"card width": "The card is [card width] by itself, \\\\[bare\\\\]."}}>How wide?</AskSize>`;
  const resolve = (values: Record<string, number>) =>
    resolveProject(projectNamed('swatch-folio'), { edition: 'metric', values });
  const { questions } = lessonOnPaper(text);
  const seeds = [{ series: 'A', sheet: 1 }];
  const key = words(
    answerKey({ name: 'a', title: 'A' }, exercisesFor(questions, resolve, 'A'), seeds, resolve({}), { paper: 'A4' }),
  );
  expect(key.replace(/ +/g, ' ')).toContain('The card is … by itself, [bare].');
});
