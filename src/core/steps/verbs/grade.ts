import { grade as gradeSeam } from '../../cloth/allowances.ts';
import { length, optional, work } from '../fields.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

export const grade = verb({
  name: 'grade',
  fields: {
    grade: work('Trims the allowances of the last seam to different widths.'),
    by: optional(length('what is left of the first; twice that is left of the others. Left out, a third of the seam.')),
  },
  cuts: true,
  handling: 3,
  title: ({ grade: cloth }) => `Grade the seam allowances of ${the(cloth)}`,
  tools: () => ['scissors'],
  apply: ({ by }, { grade: cloth }, { seam }) => {
    const least = by ?? seam / 3;
    return gradeSeam(cloth, [least, 2 * least]);
  },
});
