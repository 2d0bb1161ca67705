import { fuse as fuseOn, shiftTo } from '../../cloth/lay.ts';
import { boxOf } from '../../cloth/size.ts';
import { fail, ok, quote, SAME } from '../../measure/index.ts';
import { length, optional, point, work } from '../fields.ts';
import { inverse, translation } from '../../geometry/transform.ts';
import { measuredFrom, placedTwice, placeMeasured, saysWhere } from '../places.ts';
import { movedWork } from '../../cloth/move.ts';
import { ownPlies } from '../../cloth/place.ts';
import { moved } from '../../cloth/ring.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';
import type { Box, Point } from '../../geometry/index.ts';
import type { ClothFault, Ply, Work } from '../../cloth/index.ts';
import type { Distances } from '../../cloth/lay.ts';
import type { Placed } from '../places.ts';
import type { Result } from '../../measure/index.ts';

const fromSide = (side: string) =>
  optional(
    length(`of a patch: from the ${side} of the work to its ${side}. In the middle that way if neither side is named.`),
  );

const patchFields = {
  'from left': fromSide('left'),
  'from right': fromSide('right'),
  'from top': fromSide('top'),
  'from bottom': fromSide('bottom'),
} as const;

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
    ...patchFields,
  },
  keeps: 'to',
  fuses: true,
  laysFirst: true,
  onWrongSide: true,
  ironsFirst: true,
  handledAtIron: true,
  handling: 1,
  title: ({ fuse: stay, to, ...step }) => `Fuse ${the(stay)} to ${the(to)}${measuredFrom(step)}`,
  measured: (step) =>
    placeMeasured(step, '').map(({ says, length }) => ({
      // It is laid on the wrong side, which is looked at from the back.
      says: says
        .replace(/^ … from the (\w+)/u, 'Its $1 lies … from the $1')
        .replace(/(left|right)\.$/u, '$1, as seen from the front.'),
      length,
    })),
  tools: () => ['iron', 'press cloth'],
  pressing: () => 'an interfacing',
  apply: ({ fuse: name, inset, ...step }, { fuse: stay, to }, { setInto, kindOf }) => {
    const kind = kindOf(stay.plies[0]?.material ?? '');
    if (kind !== undefined && kind !== 'interfacing' && kind !== 'batting') {
      return fail({ code: 'other-material', message: `${quote(name)} is ${kind}, and only interfacing is fused.` });
    }
    const twice = placedTwice(step);
    if (twice) return fail(twice);
    if (saysWhere(step)) {
      const at = step.at ? ok(step.at) : cornerOf(to, stay, step);
      return at.ok ? fuseOn(to, stay, { at: at.value }) : at;
    }
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

/** Where the lower left corner of a patch lies that is measured from sides, from the left and from the bottom of the work. */
function cornerOf(to: Work, patch: Work, step: Placed): Result<Point, ClothFault> {
  const [on, box] = [boxOf(ownPlies(to)), boxOf(patch.plies)];
  const middle = { x: (on.width - box.width) / 2, y: (on.height - box.height) / 2 };
  const there = movedWork(patch, translation({ x: on.x + middle.x - box.x, y: on.y + middle.y - box.y }));
  const from = Object.fromEntries(
    Object.keys(patchFields).flatMap((name) => {
      const by = step[name as keyof typeof patchFields];
      return by === undefined ? [] : [[name.replace('from ', ''), by]];
    }),
  ) as Distances;
  const shift = shiftTo(to, there, from);
  return shift.ok ? ok({ x: middle.x + shift.value.x, y: middle.y + shift.value.y }) : shift;
}

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
