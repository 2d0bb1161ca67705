/** What the tests use of rabbit-ear, which brings no types of its own. */
declare module 'rabbit-ear' {
  /** A creased sheet in the FOLD format, with what folding adds. */
  export type Sheet = {
    vertices_coords: number[][];
    edges_vertices: number[][];
    edges_assignment: string[];
    edges_foldAngle: number[];
    faces_vertices: number[][];
    /** The place of each face in the folded stack. */
    faces_layer?: number[];
    /** Where each face lies, as [a, b, c, d, e, f]: (x, y) comes to (a x + c y + e, b x + d y + f). */
    faces_matrix2?: number[][];
  };
  const ear: {
    graph: {
      populate(sheet: Sheet): Sheet;
      /** Folds what lies left of the line over all the rest. */
      flatFold(sheet: Sheet, vector: number[], origin: number[], assignment: string): unknown;
    };
  };
  export default ear;
}
