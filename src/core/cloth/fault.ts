/** Why a step cannot be sewn, as a value. `piece`, `edge` and `amount` (mm) say where and by how much. */
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
    | 'blocked'
    | 'held'
    | 'sewn-down'
    | 'nothing-to-undo'
    | 'changed-since'
    | 'not-sewn-round'
    | 'no-gap'
    | 'not-shorter'
    | 'too-full'
    | 'off-the-work'
    | 'opening'
    | 'one-edge'
    | 'outline'
    | 'crosses-itself'
    | 'other-material'
    | 'cloth-lost';
  message: string;
  piece?: string | undefined;
  edge?: string;
  amount?: number;
};
