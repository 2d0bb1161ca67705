import { all } from '../words.ts';
import { choice, optional, works } from '../fields.ts';
import { seam as seamField } from '../seams.ts';
import { triangles as sewTriangles } from '../../cloth/apart.ts';
import { verb } from '../verb.ts';

export const triangles = verb({
  name: 'triangles',
  fields: {
    triangles: works(
      'Sews two squares, right sides together, on both sides of a diagonal, cuts them apart on it and presses: two squares ' +
        'of two triangles each, { triangles: [light, dark], makes: unit }.',
      { least: 2, most: 2 },
    ),
    seam: seamField,
    press: optional(choice(['open', 'to first', 'to second'], 'where the allowances go; to second if left out.')),
  },
  cuts: true,
  handling: 4,
  title: ({ triangles: squares }) => `Make two squares of triangles from ${all(squares)}`,
  tools: () => ['machine', 'pins', 'cutter', 'mat', 'ruler', 'iron'],
  pressing: () => 'a fold',
  apply: ({ seam, press = 'to second' }, { triangles: [light, dark] }, setting) =>
    sewTriangles(light!, dark!, { allowance: seam ?? setting.seam, press }),
});
