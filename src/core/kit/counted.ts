/** What is bought by the piece or by the pack: snaps, zips, buttons. */
import { hardwareUsed } from '../project/steps/hardware-used.ts';
import { piecesOf } from './cloth.ts';
import type { Role } from '../project/pattern.ts';
import type { Share } from './shares.ts';

export type CountedNeed = {
  /** For one set. */
  each: number;
  /** For all sets. */
  needed: number;
  /** How many a pack holds; 1 where it is sold by the piece. */
  pack: number;
  /** How many packs, or pieces. */
  packs: number;
  /** In the packs and not needed. */
  over: number;
  /** As long as this at least, in mm, where pieces are made of it: a zip by its tapes. */
  length?: number;
};

export function countedNeed(shares: readonly Share[], role: Role): CountedNeed {
  const pieces = shares.flatMap(({ pattern }) => piecesOf(pattern, role.role));
  const countIn = ({ pattern }: Share): number =>
    pattern.materials[role.role]?.count ?? Math.max(1, hardwareUsed(pattern, role.role));
  // What is told of one set is that of the one which takes most.
  const each = Math.max(...shares.map(countIn));
  const needed = shares.reduce((sum, share) => sum + countIn(share) * share.sets, 0);
  const pack = role.material?.sold?.by === 'pack' ? Math.max(1, role.material.sold.each ?? 1) : 1;
  const packs = Math.ceil(needed / pack);
  const longest = Math.max(0, ...pieces.map(({ size }) => Math.max(size.width, size.height)));
  return { each, needed, pack, packs, over: packs * pack - needed, ...(longest > 0 && { length: longest }) };
}
