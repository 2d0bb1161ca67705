import { fuse as fuseOn } from '../../cloth/lay.ts';
import { boxOf } from '../../cloth/size.ts';
import { fail, quote, SAME } from '../../measure/index.ts';
import { length, optional, point, work } from '../fields.ts';
import { inverse } from '../../geometry/transform.ts';
import { moved } from '../../cloth/ring.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';
import type { Box } from '../../geometry/index.ts';
import type { Ply, Work } from '../../cloth/index.ts';

export const fuse = verb({
  name: 'fuse',
  fields: {
    fuse: work('Fuses an interfacing to the wrong side of what “to” names: { fuse: stay, to: bag }.'),
    to: work('the work it goes to.'),
    inset: optional(
      length(
        'how far in from every edge it lies. Left out, as it is cut: an inset of its own under pieces, or the middle.',
      ),
    ),
    at: optional(point('of a patch: where its lower left corner lies, from the left and from the bottom of the work.')),
  },
  keeps: 'to',
  fuses: true,
  laysFirst: true,
  onWrongSide: true,
  ironsFirst: true,
  handledAtIron: true,
  handling: 1,
  title: ({ fuse: stay, to }) => `Fuse ${the(stay)} to ${the(to)}`,
  tools: () => ['iron', 'press cloth'],
  pressing: () => 'an interfacing',
  apply: ({ fuse: name, inset, at }, { fuse: stay, to }, { setInto, kindOf }) => {
    const kind = kindOf(stay.plies[0]?.material ?? '');
    if (kind !== undefined && kind !== 'interfacing' && kind !== 'batting') {
      return fail({ code: 'other-material', message: `${quote(name)} is ${kind}, and only interfacing is fused.` });
    }
    if (at) return fuseOn(to, stay, { at });
    const own = setInto(stay.plies[0]?.piece ?? '');
    // What is cut so much smaller at each edge than a piece lies so on it.
    if (own && to.plies.some(({ piece }) => piece === own.piece)) {
      const odd =
        inset !== undefined && ![own.left, own.right, own.top, own.bottom].some((one) => Math.abs(one - inset) < SAME);
      if (!odd) return fuseOn(to, stay, { to: own.piece, inset: own });
      const message = 'It is cut with another inset under pieces.';
      return fail({ code: 'shapes-differ', message, piece: own.piece });
    }
    if (inset === undefined) return fuseOn(to, stay);
    const fused = fuseOn(to, stay, { inset: { left: inset, bottom: inset } });
    const [cloth, there] = fused.ok ? fusedOn(fused.value) : [];
    if (!cloth || !there) return fused;
    const beyond = Math.max(
      Math.abs(cloth.width - there.width - 2 * inset),
      Math.abs(cloth.height - there.height - 2 * inset),
    );
    if (beyond < SAME) return fused;
    const message = 'It does not lie so far in from every edge: it is cut to another size.';
    return fail({ code: 'shapes-differ', message, amount: beyond });
  },
});

/** The boxes round the cloth and the interfacing that was fused to it last, both as they were cut. */
function fusedOn({ plies }: Work): [Box, Box] {
  const stay = plies.reduce((last, ply) => (ply.fusedTo !== undefined && ply.id > last.id ? ply : last), {
    ...plies[0]!,
    id: -1,
  });
  const cloth = plies.find(({ id }) => id === stay.fusedTo)!;
  const asCut = (ply: Ply) => boxOf([{ ...ply, outline: moved(ply.outline, inverse(ply.transform)) }]);
  return [asCut(cloth), asCut(stay)];
}
