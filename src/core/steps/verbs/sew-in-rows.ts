import { the } from '../words.ts';
import { boxOf } from '../../cloth/size.ts';
import { fail, listed, SAME } from '../../measure/index.ts';
import { choice, grid, optional, size } from '../fields.ts';
import { middleOfWork } from '../../cloth/place.ts';
import { movedWork } from '../../cloth/move.ts';
import { rotation } from '../../geometry/transform.ts';
import { seam as seamField } from '../seams.ts';
import { sewInRows as sewRows } from '../../cloth/in-rows.ts';
import { verb } from '../verb.ts';
import type { Cell } from '../fields.ts';
import type { Work } from '../../cloth/index.ts';

const turns = { left: 90, right: -90, round: 180 } as const;

const turned = (work: Work, { turned: way }: Cell): Work =>
  way === undefined ? work : movedWork(work, rotation(turns[way], middleOfWork(work)));

export const sewInRows = verb({
  name: 'sew in rows',
  fields: {
    'sew in rows': grid(
      'Sews works side by side into rows, and the rows below one another, as a patchwork block: ' +
        '{ sew in rows: [[dark, light], [light, dark]], makes: four-patch }. 4 of unit is four of them; unit turned left, ' +
        'right or round lies turned.',
    ),
    seam: seamField,
    finished: optional(
      size(
        'its width and height once it is sewn in, which the kit checks: unfinished, as it lies after this step, it is a seam ' +
          'allowance larger at every side.',
      ),
    ),
    press: optional(
      choice(['open', 'in turn'], 'in turn: in each row the other way than in the row above. In turn if left out.'),
    ),
  },
  handling: 3,
  title: ({ 'sew in rows': rows }) => {
    const counts = Map.groupBy(rows.flat(), ({ name }) => name);
    const what = listed(
      [...counts].map(([name, cells]) => (cells.length > 1 ? `${cells.length} × ${name}` : the(name))),
    );
    const [first] = rows;
    if (rows.length === 1) return `Sew ${what} in a row`;
    if (first!.length === 1 && rows.every((row) => row.length === 1)) return `Sew ${what} below one another`;
    return `Sew ${what} in ${rows.length} rows`;
  },
  tools: () => ['machine', 'pins', 'iron'],
  pressing: () => 'a fold',
  measured: ({ finished }) =>
    finished
      ? [
          { says: 'It is … wide finished, once it is sewn in.', length: finished.width },
          { says: 'It is … high finished, once it is sewn in.', length: finished.height },
        ]
      : [],
  apply: ({ 'sew in rows': rows, seam, finished, press }, { 'sew in rows': works }, setting) => {
    let next = 0;
    const units = rows.map((row) => row.map((cell) => turned(works[next++]!, cell)));
    const allowance = seam ?? setting.seam;
    const sewn = sewRows(units, { allowance, open: press === 'open' });
    if (!sewn.ok || !finished) return sewn;
    const { width, height } = boxOf(sewn.value.plies);
    for (const [way, off] of [
      ['width', width - 2 * allowance - finished.width],
      ['height', height - 2 * allowance - finished.height],
    ] as const) {
      if (Math.abs(off) <= SAME) continue;
      const message = `Less a seam allowance at every side its ${way} is ${off > 0 ? 'larger' : 'smaller'} than “finished” says.`;
      const fix = 'Check the sizes of the units: unfinished they are a seam allowance larger at every side, too.';
      return fail({ code: 'shapes-differ', message, field: 'finished', amount: Math.abs(off), fix });
    }
    return sewn;
  },
});
