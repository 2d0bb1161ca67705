/** Why a shape could not be made. `edge` or `corner` says where on the outline. */
export type GeometryFault = {
  code:
    | 'no-size'
    | 'unknown-edge'
    | 'unknown-corner'
    | 'corner-too-large'
    | 'nothing-left'
    | 'falls-apart'
    | 'closes-up'
    | 'crosses-itself'
    | 'not-finite';
  message: string;
  edge?: string;
  corner?: string;
};
