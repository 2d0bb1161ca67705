/**
 * Minutes of work against published times. Two kinds are held apart: somebody who sews at home, and a learner in a class.
 *
 * At home: nine timed stages of a pair of jeans (You Sew Girl, yousewgirl.blogspot.com) against the minutes of a factory
 * for the same (R. Selim, garment notes, 2024: jeans 22 to 30): a home takes 20 to 28 times as long. That factor turns
 * the published minutes of single operations in a factory into minutes at home.
 *
 * In a class: what classes planned and took for whole projects. Such a time holds the making, what is shown, setting up
 * and tidying up, and some waiting, so that the making alone must come to half of it or more, and to no more than it.
 * A school's nine lessons of 44 minutes for a pillowcase with a French seam (scribd.com/document/185814488) are not held
 * against it: each lesson begins and ends with clearing a room. Nor are operations of a factory that do not say what
 * they sew.
 */
import { describe, expect, test } from 'vitest';
import { check, makeUp, resolveProject } from '../../src/core/project/index.ts';
import { LEARNER } from '../../src/core/steps/index.ts';
import { tasksOf } from '../../src/core/kit/index.ts';
import { notionsPouch, resolved, shelf } from '../core/project/files.ts';
import type { Pattern } from '../../src/core/project/index.ts';

/** A project in inches; zips are hardware, and so nobody cuts them. */
const file = (pieces: string, steps: string): Pattern => {
  const indented = (lines: string) => lines.trim().replace(/^\s*/gmu, '  ');
  const pattern = resolved(
    `title: From a class\nunits: inch\nmeasures: { seam: 1/2 }\nmaterials: { zip: coil zip }\npieces:\n${indented(pieces)}\nsteps:\n${indented(steps)}\n`,
    { materials: shelf() },
  );
  expect(check(pattern).filter(({ severity }) => severity === 'error')).toEqual([]);
  return pattern;
};

describe('at home', () => {
  test('the nine stages of a pair of jeans come to 607 minutes, 20 to 28 times those of a factory', () => {
    const stages = [33, 91, 30, 61, 87, 80, 29, 125, 71];
    const home = stages.reduce((sum, one) => sum + one, 0);
    expect(home).toBe(607);
    expect([Math.round(home / 30), Math.round(home / 22)]).toEqual([20, 28]);
  });

  /** The minutes at home of the steps: those of a step that a teacher does before the class. */
  const atHome = (pieces: string, steps: string): number =>
    makeUp(file(pieces, steps.replaceAll(' }', ', done by: teacher }'))).reduce(
      (sum, { minutes, times }) => sum + minutes.value * times,
      0,
    );

  const cuff = (steps: string) => ['cuff: { cut: 2, size: [10, 5] }', steps] as const;
  test.each([
    // P. Sarkar, a study of a men's shirt by General Sewing Data, 2011 (scribd.com/document/491735900/shirt-garment).
    ['hems of two cuffs', 0.501, ...cuff('- { hem: cuff, at: top, fold: 3/8 }')],
    ['a hem of a pocket', 0.28, 'pocket: { size: [6, 7] }', '- { hem: pocket, at: top, fold: 1/4, then: 1 }'],
    [
      'topstitching of a collar',
      0.42,
      'collar: { size: [16, 3] }',
      '- { topstitch: collar, at: [left, top, right], by: 1/4 }',
    ],
    [
      'four pleats of a sleeve',
      0.389,
      'sleeve: { size: [10, sleeve length], pleats: { pockets: 4, depth: 1/2, step: 1 } }',
      '- { pleat: sleeve }',
    ],
    // Textile Blog, operation breakdown of trousers (textileblog.com/operation-breakdown-and-smv-of-a-trouser).
    [
      'a zip set into a fly',
      0.45,
      'a: { size: [8, 8] }\nb: { size: [8, 8] }\ntape: { from: zip, size: [8, 1/2], allowance: 0 }',
      '- { join: [a, b], between: tape, at: [top, top, bottom], seam: 1/4 }',
    ],
  ])('%s: %f minutes in a factory', (_what, factory, pieces, steps) => {
    const minutes = atHome(pieces, steps);
    // Whole minutes on our side.
    expect(minutes).toBeGreaterThanOrEqual(20 * factory - 0.5);
    expect(minutes).toBeLessThanOrEqual(28 * factory + 0.5);
  });

  test('a buttonhole sewn by machine takes 11 minutes (You Sew Girl, in the making of the jeans)', () => {
    expect(atHome('fly: { size: [6, 3] }', '- { buttonhole: fly, at: [3, 1 1/2], length: 3/4 }')).toBe(11);
  });

  /** A whole project at home: the teacher cuts and makes it. */
  const project = (pattern: Pattern): number =>
    tasksOf(pattern).reduce((sum, { minutes }) => sum + minutes, 0) / LEARNER;

  test('an envelope cushion is a matter of 30 minutes (C&H Fabrics 2016; Hudson & Hen; Mavery Designs)', () => {
    const cushion = file(
      'front: { size: [17, 17] }\nupper: { size: [17, 12] }\nlower: { size: [17, 12] }',
      `- { hem: upper, at: bottom, fold: 1/2, then: 1/2 }
         - { hem: lower, at: top, fold: 1/2, then: 1/2 }
         - { lay: upper, on: front, at: top, face: down }
         - { lay: lower, on: front, at: bottom, face: down, makes: cover }
         - { topstitch: cover, at: [left, top, right, bottom], by: 1/2 }
         - { turn over: cover }`,
    );
    const cutting = tasksOf(cushion).find(({ id }) => id === 'cut')!.minutes / LEARNER;
    // The sources do not say whether they count the cutting, which takes 12 minutes here: without it their 30 are met
    // within a tenth, with it they are passed by not quite half.
    expect(project(cushion) - cutting).toBeGreaterThan(27);
    expect(project(cushion) - cutting).toBeLessThan(33);
    expect(project(cushion)).toBeLessThan(45);
  });

  test('a small tote with a squared base takes 1 to 1 1/2 hours (Craftbits)', () => {
    // 36 x 38.5 cm, squares of 4 cm, a strap of 10 x 70 cm folded in four.
    const minutes = project(file(TOTE, `${BODY}\n${STRAP}`));
    expect(minutes).toBeGreaterThan(60);
    expect(minutes).toBeLessThan(90);
  });
});

const TOTE = 'front: { size: [14 1/2, 15] }\nback: { like: front }\nstrap: { size: [4, 28], allowance: 0 }';
const BODY = `- { hem: front, at: top, fold: 1/2, then: 1 }
  - { hem: back, at: top, fold: 1/2, then: 1 }
  - { sew round: [front, back], open: [top], makes: bag }
  - { box corner: bag, at: [bottom left, bottom right], square: 1 1/2 }
  - { turn: bag }`;
const STRAP = '- { fold in four: strap, edgestitch: both sides }';

describe('in a class', () => {
  /** Of a learner alone, setting up and tidying up counted for each session. */
  const inClass = (pattern: Pattern, sessions = 1): number =>
    tasksOf(pattern).reduce((sum, { minutes }) => sum + minutes, 10 * sessions);

  const PILLOW = 'front: { size: [21, 34] }\nback: { like: front }';
  const pillowcase = file(
    PILLOW,
    `- { hem: front, at: top, fold: 1/2, then: 4 }
     - { hem: back, at: top, fold: 1/2, then: 4 }
     - { sew round: [front, back], open: [top], makes: case }
     - { turn: case }`,
  );
  const pouch = file(
    'front: { size: [9, 6], allowance: { top: 1/4, others: 1/2 } }\nback: { like: front }\n' +
      'front tape: { from: zip, size: [9, 1/2], allowance: 0 }\nback tape: { from: zip, like: front tape }',
    `- { join: [front, front tape], at: [top, bottom], seam: 1/4, topstitch: 1/8, makes: front half }
     - { join: [back, back tape], at: [top, bottom], seam: 1/4, topstitch: 1/8, makes: back half }
     - { sew round: [front half, back half], open: [top], makes: pouch }
     - { turn: pouch }`,
  );

  test.each([
    // 3of blog, 2015: 7 children, 1 teacher, 2 hours each.
    ['a pillowcase', pillowcase, 120, 1],
    // Utah 4-H day camps, Brigham City, 2018 (docslib.org/doc/9079154): 1 to 4 p.m.
    ['a pillowcase at a day camp', pillowcase, 180, 1],
    // Sewing Lessons with Haley, 2017: 2 children, about 2 hours.
    ['a pouch with a zip', pouch, 120, 1],
    // The same, 2 hours and 15 to 20 minutes.
    ['a boxed tote', file(TOTE, BODY), 135, 1],
  ])('%s: the making fills half of the time or more, and no more than it', (_what, pattern, published, sessions) => {
    const minutes = inClass(pattern, sessions);
    expect(minutes).toBeGreaterThanOrEqual(published / 2);
    expect(minutes).toBeLessThanOrEqual(published);
  });

  test('the lined and boxed pouch of the demo lies between a pouch with a zip and a lined tote of four sessions', () => {
    // Stitches by Debbie, 2013: a lined tote, adults at a community school, 4 sessions of 2 hours.
    for (const edition of ['inch', 'metric'] as const) {
      const minutes = inClass(resolveProject(notionsPouch(), { edition, materials: shelf() }), 2);
      expect(minutes).toBeGreaterThan(inClass(pouch));
      expect(minutes).toBeGreaterThan(120);
      expect(minutes).toBeLessThan(4 * 120);
    }
  });
});
