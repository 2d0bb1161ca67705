/** What is bought by the piece or by the pack: snaps, zips, buttons. */
import { piecesOf } from './cloth.ts';
import { setsFor } from './group.ts';
import type { Pattern, Role } from '../project/pattern.ts';
import type { Group } from './group.ts';

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

export function countedNeed(pattern: Pattern, role: Role, group: Group): CountedNeed {
  const pieces = piecesOf(pattern, role.role);
  const each = role.count ?? 1;
  const needed = each * setsFor(group);
  const pack = role.material?.sold?.by === 'pack' ? Math.max(1, role.material.sold.each ?? 1) : 1;
  const packs = Math.ceil(needed / pack);
  const longest = Math.max(0, ...pieces.map(({ size }) => Math.max(size.width, size.height)));
  return { each, needed, pack, packs, over: packs * pack - needed, ...(longest > 0 && { length: longest }) };
}
