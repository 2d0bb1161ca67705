import { choice, length, optional, work } from '../fields.ts';
import { edgeOn, SIDES } from '../../cloth/sides.ts';
import { fail } from '../../measure/index.ts';
import { quilt as sewRows } from '../../cloth/quilt.ts';
import { sewShut } from '../rows.ts';
import { sewsShut } from '../../cloth/openings.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

/** Which ways rows run, in degrees. */
const ways = { grid: [0, 90], level: [0], upright: [90], diamonds: [45, 135] } as const;

const words = {
  grid: 'in a grid',
  level: 'in level rows',
  upright: 'in upright rows',
  diamonds: 'in diamonds',
} as const;

export const quilt = verb({
  name: 'quilt',
  fields: {
    quilt: work('Sews rows across a work, through all its layers: { quilt: mat, every: 2, lines: grid }.'),
    every: length('from row to row. One runs through the middle of the work.'),
    lines: optional(choice(['grid', 'level', 'upright', 'diamonds'], 'which way the rows run; a grid if left out.')),
    'sew shut': sewShut,
  },
  handling: 4,
  title: ({ quilt: cloth, lines = 'grid' }) => `Quilt ${the(cloth)} ${words[lines]}`,
  measured: ({ every }) => [{ says: 'Sew a row through the middle, and the others … from row to row.', length: every }],
  tools: () => ['machine', 'pins', 'ruler'],
  apply: ({ every, lines = 'grid', 'sew shut': isMeant }, { quilt: cloth }) => {
    const sides = SIDES.flatMap((side) => {
      const edge = edgeOn(cloth, side);
      return edge.ok ? [edge.value] : [];
    });
    const shut = isMeant ? undefined : sewsShut(cloth, sides);
    return shut ? fail(shut) : sewRows(cloth, { every, angles: ways[lines] });
  },
});
