import { fuse as fuseOn } from '../../cloth/lay.ts';
import { length, optional, work } from '../fields.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

export const fuse = verb({
  name: 'fuse',
  fields: {
    fuse: work('Fuses an interfacing to the wrong side of what “to” names: { fuse: stay, to: bag }.'),
    to: work('the work it goes to.'),
    inset: optional(length('how far in from the edges it lies. Left out, it lies in the middle.')),
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
  apply: ({ inset }, { fuse: stay, to }) =>
    fuseOn(to, stay, inset === undefined ? {} : { inset: { left: inset, bottom: inset } }),
});
