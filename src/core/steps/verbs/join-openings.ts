import { joinOpenings as join } from '../../cloth/put.ts';
import { openingNamed } from '../../cloth/openings.ts';
import { optional, text, work } from '../fields.ts';
import { seam as seamField } from '../seams.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

export const joinOpenings = verb({
  name: 'join openings',
  fields: {
    'join openings': work(
      'Sews the openings of two works that lie in one another together all round: { join openings: bag, seam: 1/2 }.',
    ),
    at: optional(text('which openings, where there are several: top opening.')),
    seam: seamField,
  },
  handling: 4,
  title: ({ 'join openings': cloth, at }) =>
    `Sew ${the(cloth)} and what lies in it together all round ${at === undefined ? 'the opening' : the(at)}`,
  tools: () => ['machine', 'pins'],
  apply: ({ at, seam }, { 'join openings': cloth }, setting) => {
    const opening = openingNamed(cloth, at);
    return opening.ok ? join(cloth, opening.value, seam ?? setting.seam) : opening;
  },
});
