/** Why a step cannot be sewn, as a value. `piece`, `edge` and `amount` (mm) say where and by how much, `field` what in a step says so. */
export type ClothFault = {
  code:
    | 'not-finite'
    | 'no-size'
    | 'no-plies'
    | 'unknown-edge'
    | 'ambiguous-edge'
    | 'unknown-piece'
    | 'not-straight'
    | 'edge-inside'
    | 'misses'
    | 'shapes-differ'
    | 'too-deep'
    | 'too-many'
    | 'too-small'
    | 'blocked'
    | 'held'
    | 'sewn-down'
    | 'sewn-along'
    | 'nothing-to-undo'
    | 'changed-since'
    | 'not-sewn-round'
    | 'no-gap'
    | 'not-shorter'
    | 'too-full'
    | 'off-the-work'
    | 'opening'
    | 'faces'
    | 'too-wide'
    | 'points'
    | 'unclear-casing'
    | 'one-edge'
    | 'strip-length'
    | 'too-many-edges'
    | 'no-edge'
    | 'two-places'
    | 'outline'
    | 'crosses-itself'
    | 'other-material'
    | 'enclosed'
    | 'cloth-lost';
  message: string;
  piece?: string | undefined;
  edge?: string;
  /** Of a side that is curved: what its edge is called. */
  own?: string;
  /** The field of the step that says so. */
  field?: string;
  amount?: number;
  /** Lengths in mm that stand in the message where it says …, in order. */
  lengths?: readonly number[];
  /** What mends it, where that is more than its code tells. */
  fix?: string;
};
