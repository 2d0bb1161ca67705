import { atEdges, the } from '../words.ts';
import { choice, edges, work } from '../fields.ts';
import { finish as finishEdges } from '../../cloth/finish.ts';
import { edgesOn } from '../../cloth/sides.ts';
import { fail } from '../../measure/index.ts';
import { sewsShut } from '../../cloth/openings.ts';
import { verb } from '../verb.ts';

const how = { zigzag: 'with a zigzag stitch', overlock: 'with an overlock stitch', pinked: 'with pinking shears' };

export const finish = verb({
  name: 'finish',
  fields: {
    finish: work(
      'Keeps raw edges from fraying, before they are sewn or where a seam holds them: { finish: bag, at: [left, right], ' +
        'with: zigzag }. Edges that lie on one another are finished together. An edge is bound by “bind”.',
    ),
    with: choice(
      ['zigzag', 'overlock', 'pinked'],
      'zigzag and overlock are rows over the edge; pinked is cut with shears and loses nothing that is measured.',
    ),
    at: edges(
      'sides, or a piece’s own edges wherever they went: front left. seams: the allowances of all its seams that one can get at.',
    ),
  },
  handling: 1,
  title: ({ finish: cloth, at, with: kind }) => {
    if (at[0] === 'seams') return `Finish the seam allowances of ${the(cloth)} ${how[kind]}`;
    return `Finish ${the(cloth)}${at[0] === 'all' ? ' all round' : atEdges(at)} ${how[kind]}`;
  },
  tools: ({ with: kind }) => [
    kind === 'zigzag' ? 'machine' : kind === 'overlock' ? 'overlock machine' : 'pinking shears',
  ],
  apply: ({ at, with: kind }, { finish: cloth }) => {
    const found = edgesOn(cloth, at);
    const shut = found.ok && kind !== 'pinked' ? sewsShut(cloth, found.value) : undefined;
    return shut ? fail(shut) : finishEdges(cloth, at, kind);
  },
});
