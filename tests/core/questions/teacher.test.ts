/**
 * What learners commonly write, and what a teacher would say to it, written down before the machine was asked: for each
 * question of the demo lessons the ten commonest wrong answers, in inches. Common practice, no source.
 *
 * A blank in a sentence stands for any blank. An answer that no single slip explains gets no diagnosis, and says so.
 */
import { describe, expect, test } from 'vitest';
import { judge } from '../../../src/core/questions/index.ts';
import { demoQuestions } from './demo.ts';

const inches = (unit: string) => `Your number is right in ${unit}, but it was read as inches. Check the unit.`;
const [CM, MM] = [inches('centimetres'), inches('millimetres')];
const HALF = 'That is half of it. The whole is wanted.';
const TWICE = 'That is twice as much as is wanted.';
const ADD = 'It is added here.';
const TAKE = 'It is taken away here.';
const SIDES = 'Both side edges take it.';
const ENDS = 'Top and bottom both take it.';
const COUNTS = 'It counts twice.';
const alone = (what: string) => `That is ${what} alone. The rest of the sum is missing.`;
const out = (what: string, why: string) => `You left out ${what}. ${why}`;
const both = (what: string) => `You left out ${what}. Both belong in the sum.`;
const more = (mm: string) => `Not yet: ${mm} in is too much.`;
const less = (mm: string) => `Not yet: ${mm} in is too little.`;

const SEAM = 'the seam allowance';
const EDGE = 'what each edge takes';

const panelWidth = {
  // 4 1/4 + 2 × 1/8 + 2 × 3/8 = 5 1/4
  '4 1/2': out(SEAM, SIDES),
  '4 7/8': `You added ${SEAM} on one side only. ${SIDES}`,
  5: out('the ease', COUNTS),
  '5 1/8': `You counted the ease only once. ${COUNTS}`,
  '4 1/4': alone('the card width'),
  '4 3/4': `You counted the ease and ${SEAM} only once. They count twice.`,
  6: `You added ${SEAM} twice at each side. Once at each side is enough.`,
  '5 1/2': 'You counted the ease four times. Twice is enough.',
  13.3: CM,
  4: 'You used the card height. The sum needs the card width.',
};
const folioWidth = {
  // 5 1/4 - 2 × 3/8 = 4 1/2
  '5 1/4': out(SEAM, SIDES),
  '4 7/8': `You took away ${SEAM} on one side only. ${SIDES}`,
  6: `You added ${SEAM}. ${TAKE}`,
  '3 3/4': `You took away ${SEAM} twice at each side. Once at each side is enough.`,
  '2 1/4': HALF,
  9: TWICE,
  11.4: CM,
  114: MM,
  '4 1/4': less('4¼'),
  '6 3/8': 'You used the panel height. The sum needs the panel width.',
};
const climb = {
  // 2 1/4 + 3/4 = 3
  '2 1/4': out('the step', ADD),
  '3/4': out('the depth', ADD),
  '3 3/4': 'You added the step twice. Once is enough.',
  '5 1/4': 'You added the depth twice. Once is enough.',
  6: TWICE,
  7.6: CM,
  76: MM,
  '2 3/4': less('2¾'),
  '4 1/2': more('4½'),
  8: more('8'),
};
const firstFold = {
  // 3/8 + 1/4 + 2 1/4 = 2 7/8
  '2 1/4': alone('the depth'),
  '2 1/2': out(SEAM, ADD),
  '2 5/8': out('the lift', ADD),
  '5/8': out('the depth', ADD),
  '3 1/4': `You added ${SEAM} twice. Once is enough.`,
  '3 1/8': 'You added the lift twice. Once is enough.',
  '5 1/8': 'You added the depth twice. Once is enough.',
  '5 3/4': TWICE,
  7.3: CM,
  73: MM,
};
const thirdFold = {
  // 3/8 + 1/4 + 3 × 2 1/4 + 3/4 = 8 1/8
  '7 3/8': out('the step', ADD),
  '7 3/4': out(SEAM, ADD),
  '7 7/8': out('the lift', ADD),
  '7 1/2': both(`${SEAM} and the lift`),
  '5 7/8': 'You counted the depth one time too few.',
  '10 3/8': 'You counted the depth one time too many.',
  '8 7/8': 'You added the step twice. Once is enough.',
  '1 3/8': out('the depth', 'It counts 3 times.'),
  20.6: CM,
  206: MM,
};

const table: Record<string, Record<string, string>> = {
  'hem-and-mitre: AskSize per edge': {
    // 1/4 + 3/4 = 1
    '3/4': out('the first turn', ADD),
    '1/4': out('the hem', ADD),
    '1 1/4': 'You added the first turn twice. Once is enough.',
    '1 3/4': 'You added the hem twice. Once is enough.',
    '1/2': HALF,
    2: TWICE,
    2.5: CM,
    25: MM,
    '7/8': less('⅞'),
    '1 1/2': more('1½'),
  },
  'hem-and-mitre: AskSize napkin cut': {
    // 16 + 2 × 1 = 18
    16: out(EDGE, SIDES),
    17: `You added ${EDGE} on one side only. ${SIDES}`,
    20: `You added ${EDGE} twice at each side. Once at each side is enough.`,
    14: `You took away ${EDGE}. ${ADD}`,
    2: out('the napkin side', ADD),
    9: HALF,
    36: TWICE,
    45.7: CM,
    457: MM,
    '17 1/2': less('17½'),
  },
  'hem-and-mitre: AskSize runner cut length': {
    // 42 + 2 × 1 = 44
    42: out(EDGE, ENDS),
    43: `You added ${EDGE} at one edge only. ${ENDS}`,
    46: `You added ${EDGE} twice at each edge. Once at each edge is enough.`,
    40: `You took away ${EDGE}. ${ADD}`,
    16: 'You used the width of the runner. The sum needs the length of the runner.',
    22: HALF,
    88: TWICE,
    111.8: CM,
    1118: MM,
    '43 1/2': less('43½'),
  },
  'hem-and-mitre: AskSize 2 * per edge': {
    // 2 × 1 = 2
    1: `You counted ${EDGE} only once. ${COUNTS}`,
    4: TWICE,
    5.1: CM,
    51: MM,
    '3/4': less('¾'),
    '1 1/2': less('1½'),
    '1 3/4': less('1¾'),
    '2 1/4': more('2¼'),
    8: more('8'),
    18: more('18'),
  },
  'hem-and-mitre: AskSize napkin cut - 2 * (first turn + 2 * hem)': {
    // 18 - 2 × (1/4 + 2 × 3/4) = 14 1/2
    16: 'You counted the hem only once. It counts twice.',
    '16 1/4': 'You took away the first turn and the hem only once. They count twice.',
    18: 'You left out the first turn and the hem. They count twice.',
    15: 'You left out the first turn. It is added here.',
    '17 1/2': 'You left out the hem. It counts twice.',
    '21 1/2': 'You added the first turn and the hem. They are taken away here.',
    '7 1/4': HALF,
    29: TWICE,
    36.8: CM,
    368: MM,
  },
  'size-the-panel: AskSize card width': {
    // 4 1/4
    3: 'That is the card height. You are asked for the card width.',
    '4 1/2': more('4½'),
    4: less('4'),
    '2 1/8': HALF,
    '8 1/2': TWICE,
    10.8: CM,
    108: MM,
    5: more('5'),
    '3 1/4': less('3¼'),
    '5 1/4': more('5¼'),
  },
  'size-the-panel: AskSize card width + 2 * ease': {
    // 4 1/4 + 2 × 1/8 = 4 1/2
    '4 1/4': out('the ease', COUNTS),
    '4 3/8': `You counted the ease only once. ${COUNTS}`,
    '4 3/4': 'You counted the ease four times. Twice is enough.',
    4: `You took away the ease. ${ADD}`,
    '1/4': out('the card width', ADD),
    '3 1/4': 'You used the card height. The sum needs the card width.',
    '2 1/4': HALF,
    9: TWICE,
    11.4: CM,
    '5 1/4': more('5¼'),
  },
  'size-the-panel: AskSize panel width': panelWidth,
  'size-the-panel: Practice panel width': panelWidth,
  'size-the-panel: AskSize folio width': folioWidth,
  'size-the-panel: AskSize card height - depth': {
    // 3 - 2 1/4 = 3/4
    3: out('the depth', TAKE),
    '2 1/4': 'That is the depth alone. The rest of the sum is missing.',
    '5 1/4': `You added the depth. ${TAKE}`,
    2: 'You used the card width. The sum needs the card height.',
    '3/8': HALF,
    '1 1/2': TWICE,
    1.9: CM,
    19: MM,
    '1 1/4': more('1¼'),
    '1/4': less('¼'),
  },
  'size-the-panel: AskSize (pockets - 1) * step': {
    // 4 × 3/4 = 3
    '3 3/4': 'Count the steps between the pockets, not the pockets. There is one fewer.',
    '5 * 3/4': 'Count the steps between the pockets, not the pockets. There is one fewer.',
    '2 1/4': 'You counted the step one time too few.',
    '3/4': 'You counted the step only once. It counts 4 times.',
    '1 1/2': HALF,
    6: TWICE,
    7.6: CM,
    76: MM,
    4: more('4'),
    5: more('5'),
  },
  'size-the-panel: AskSize flap width': {
    // 4 1/2 - 2 × 1/8 + 2 × 3/8 = 5
    '4 1/4': out(SEAM, SIDES),
    '4 1/2': alone('the folio width'),
    '5 1/4': out('the flap clearance', COUNTS),
    '4 5/8': `You added ${SEAM} on one side only. ${SIDES}`,
    '5 1/8': `You took away the flap clearance only once. ${COUNTS}`,
    '5 1/2': `You added the flap clearance. ${TAKE}`,
    '3 1/2': `You took away ${SEAM}. ${ADD}`,
    '5 3/4': `You added ${SEAM} twice at each side. Once at each side is enough.`,
    10: TWICE,
    12.7: CM,
  },
  'pleat-the-strip: AskSize 2 * pockets': {
    // 2 × 5 = 10
    5: 'You counted the number of pockets only once. It counts twice.',
    '2 * 4': 'You counted one too few. Look again at the number of pockets.',
    12: 'You counted one too many. Look again at the number of pockets.',
    20: TWICE,
    9: 'Not yet: 9 is too little.',
    11: 'Not yet: 11 is too much.',
    4: 'Not yet: 4 is too little.',
    6: 'Not yet: 6 is too little.',
    7: 'Not yet: 7 is too little.',
    15: 'Not yet: 15 is too much.',
  },
  'pleat-the-strip: AskSize pocket strip fold 1': firstFold,
  'pleat-the-strip: AskSize pocket strip fold 2': {
    // 2 7/8 + 2 1/4 = 5 1/8
    '2 1/4': out('the way to fold 1', ADD),
    '2 7/8': out('the depth', ADD),
    '7 3/8': 'You added the depth twice. Once is enough.',
    '8': 'You added the way to fold 1 twice. Once is enough.',
    '5/8': `You took away the depth. ${ADD}`,
    '10 1/4': TWICE,
    13: CM,
    130: MM,
    '4 1/2': less('4½'),
    '5 7/8': more('5⅞'),
  },
  'pleat-the-strip: AskSize depth + step': climb,
  'pleat-the-strip: Practice depth + step': climb,
  'pleat-the-strip: AskSize pocket strip fold 3': {
    // 5 1/8 + 2 1/4 + 3/4 = 8 1/8
    '7 3/8': out('the step', ADD),
    '5 7/8': out('the depth', ADD),
    3: out('the way to fold 2', ADD),
    '5 1/8': alone('the way to fold 2'),
    '8 7/8': 'You added the step twice. Once is enough.',
    '10 3/8': 'You added the depth twice. Once is enough.',
    '6 5/8': `You took away the step. ${ADD}`,
    '3 5/8': `You took away the depth. ${ADD}`,
    '16 1/4': TWICE,
    20.6: CM,
  },
  'pleat-the-strip: Practice seam + lift + depth': firstFold,
  'pleat-the-strip: Practice seam + lift + 3 * depth + step': thirdFold,
  'pleat-the-strip: AskSize pocket strip length': {
    // 7 1/8 + 2 × 5 × 2 1/4 = 29 5/8
    '18 3/8': 'You counted the depth 5 times. It counts 10 times.',
    '7 1/8': out('the depth', 'It counts 10 times.'),
    '22 1/2': out('the height of the pleated pocket strip', ADD),
    '25 1/8': 'You counted one too few. Look again at the number of pockets.',
    '34 1/8': 'You counted one too many. Look again at the number of pockets.',
    '28 7/8': 'You used a finished size. The cut size belongs here.',
    '5 1/4': 'That is the cut width of the pocket strip. You are asked for the cut length of the pocket strip.',
    '59 1/4': TWICE,
    75.2: CM,
    752: MM,
  },
  'pleat-the-strip: AskSize panel height': {
    // 3/8 + 1/4 + 2 1/4 + 4 × 3/4 + 1 1/4 = 7 1/8
    // The finished size, and a step too few, which come to the same: nobody can tell.
    '6 3/8': 'Not yet: that is too little. Look again at the step and which size is asked.',
    '6 3/4': out(SEAM, ADD),
    '6 7/8': out('the lift', ADD),
    '5 7/8': out('the head', ADD),
    '4 1/8': out('the step', 'It counts 4 times.'),
    '7 7/8': 'You counted the step one time too many.',
    // A depth is as much as three steps.
    '4 7/8': 'Not yet: that is too little. Look again at the depth and the step.',
    '6 1/2': both(`${SEAM} and the lift`),
    '5 1/4': 'That is the panel width. You are asked for the panel height.',
    18.1: CM,
  },
  'pleat-the-strip: AskSize panel width - 2 * seam': folioWidth,
  'make-it-up: AskSize flap width - 2 * seam': {
    // 5 - 2 × 3/8 = 4 1/4
    5: out(SEAM, SIDES),
    '4 5/8': `You took away ${SEAM} on one side only. ${SIDES}`,
    '5 3/4': `You added ${SEAM}. ${TAKE}`,
    '3 1/2': `You took away ${SEAM} twice at each side. Once at each side is enough.`,
    '2 1/8': HALF,
    '8 1/2': TWICE,
    10.8: CM,
    108: MM,
    '4 1/2': more('4½'),
    4: less('4'),
  },
  'make-it-up: AskSize folio width - 2 * gap inset': {
    // 4 1/2 - 2 × 1/2 = 3 1/2
    '4 1/2': out('the gap inset', COUNTS),
    4: `You took away the gap inset only once. ${COUNTS}`,
    '5 1/2': `You added the gap inset. ${TAKE}`,
    '2 1/2': 'You took away the gap inset four times. Twice is enough.',
    '1 3/4': HALF,
    7: TWICE,
    8.9: CM,
    89: MM,
    '5 3/8': 'You used the folio height. The sum needs the folio width.',
    '3 1/4': less('3¼'),
  },
  'make-it-up: AskSize folio width': folioWidth,
  'make-it-up: AskSize folio height + flap drop + turn of cloth': {
    // 6 3/8 + 5 1/2 + 1/8 = 12
    '11 7/8': out('the turn of cloth', ADD),
    '6 1/2': out('the flap drop', ADD),
    '5 5/8': out('the folio height', ADD),
    '6 3/8': alone('the folio height'),
    '5 1/2': alone('the flap drop'),
    '12 1/8': 'You added the turn of cloth twice. Once is enough.',
    '17 1/2': 'You added the flap drop twice. Once is enough.',
    24: TWICE,
    30.5: CM,
    '10 1/8': 'You used the folio width. The sum needs the folio height.',
  },
  'make-it-up: AskSize ease': {
    // 1/8
    '1/16': HALF,
    '1/4': TWICE,
    '3/16': more('3⁄16'),
    '3/8': more('⅜'),
    '1/2': more('½'),
    0.32: CM,
    3.2: MM,
    1: more('1'),
    '4 1/4': more('4¼'),
    '5/8': more('⅝'),
  },
  'size-and-box: AskSize square': {
    // 2 1/2 ÷ 2 = 1 1/4
    '2 1/2': 'You took the whole of the base depth. Half of it is wanted.',
    '5/8': HALF,
    5: more('5'),
    3.2: CM,
    32: MM,
    '1 5/8': more('1⅝'),
    '7/8': less('⅞'),
    '1 1/2': more('1½'),
    1: less('1'),
    '3 1/2': more('3½'),
  },
  'size-and-box: AskSize square + seam': {
    // 1 1/4 + 3/8 = 1 5/8
    '1 1/4': out(SEAM, ADD),
    '3/8': out('the square', ADD),
    2: `You added ${SEAM} twice. Once is enough.`,
    '7/8': `You took away ${SEAM}. ${ADD}`,
    '2 7/8': 'You added the square twice. Once is enough.',
    '3 1/4': TWICE,
    4.1: CM,
    41: MM,
    '1 1/2': less('1½'),
    '2 1/2': more('2½'),
  },
  'size-and-box: AskSize flat width': {
    // 7 + 2 1/2 = 9 1/2
    7: out('the base depth', ADD),
    12: 'You added the base depth twice. Once is enough.',
    '4 1/2': `You took away the base depth. ${ADD}`,
    '2 1/2': out('the base length', ADD),
    5: 'That is the flat height. You are asked for the flat width.',
    '4 3/4': HALF,
    19: TWICE,
    24.1: CM,
    241: MM,
    '8 1/4': less('8¼'),
  },
  'size-and-box: AskSize panel width': {
    // 9 1/2 + 2 × 3/8 = 10 1/4
    '9 1/2': out(SEAM, SIDES),
    '9 7/8': `You added ${SEAM} on one side only. ${SIDES}`,
    11: `You added ${SEAM} twice at each side. Once at each side is enough.`,
    '8 3/4': `You took away ${SEAM}. ${ADD}`,
    '5 5/8': 'That is the panel height. You are asked for the panel width.',
    '5 3/4': 'You used the flat height. The sum needs the flat width.',
    '3/4': out('the flat width', ADD),
    26: CM,
    260: MM,
    '10 1/8': less('10⅛'),
  },
  'size-and-box: AskSize panel height': {
    // 5 + 3/8 + 1/4 = 5 5/8
    5: alone('the flat height'),
    '5 1/4': out(SEAM, ADD),
    '5 3/8': out('the zip seam', ADD),
    '5 7/8': 'You added the zip seam twice. Once is enough.',
    6: `You added ${SEAM} twice. Once is enough.`,
    '4 7/8': `You took away ${SEAM}. ${ADD}`,
    '5 1/8': `You took away the zip seam. ${ADD}`,
    '10 1/4': 'That is the panel width. You are asked for the panel height.',
    14.3: CM,
    '5 3/4': more('5¾'),
  },
  'size-and-box: AskSize 2 * (square - seam)': {
    // 2 × (1 1/4 - 3/8) = 1 3/4
    '2 1/2': out(SEAM, TAKE),
    '7/8': `You counted the square and ${SEAM} only once. They count twice.`,
    '2 1/8': 'You multiplied or divided the square alone. The whole sum in the brackets is meant.',
    '3 1/4': `You added ${SEAM}. ${TAKE}`,
    1: `You took away ${SEAM} twice. Once is enough.`,
    '3 1/2': TWICE,
    '1 1/4': less('1¼'),
    '1 5/8': less('1⅝'),
    4.4: CM,
    44: MM,
  },
};

const questions = demoQuestions();

test('every question of the demo lessons is in the table, with ten answers', () => {
  expect(Object.keys(table).toSorted()).toEqual(questions.map(({ asked }) => asked).toSorted());
  for (const [asked, rows] of Object.entries(table)) expect([asked, Object.keys(rows).length]).toEqual([asked, 10]);
});

describe.each(questions.map((one) => [one.asked, one] as const))('%s', (asked, { question, patternIn }) => {
  const pattern = patternIn('inch');
  test.each(Object.entries(table[asked] ?? {}))('%s', (answer, sentence) => {
    expect(judge(answer, question, pattern).sentence.replaceAll(/[\u202f\u00a0\u2009]/gu, ' ')).toBe(sentence);
  });
});
