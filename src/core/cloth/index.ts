export { isAlike } from './alike.ts';
export { attach } from './attach.ts';
export { baste, edgestitch, stitchClass, topstitch } from './stitch.ts';
export { bind } from './bind.ts';
export { boxCorner } from './box.ts';
export { clipCorners, grade } from './allowances.ts';
export { closeGap } from './gap.ts';
export { cut } from './cut.ts';
export { ease, gather } from './gather.ts';
export { findEdge, lineInside, lineLeft } from './edge.ts';
export { flatFelledSeam, frenchSeam } from './enclosed.ts';
export { edgeOn, edgesOn, laidGroups, SIDES } from './sides.ts';
export { flip, rotate, slide } from './move.ts';
export { exposedEdges } from './exposed.ts';
export { finish } from './finish.ts';
export { fold } from './fold.ts';
export { fuse, lay } from './lay.ts';
export { hem } from './hem.ts';
export { join } from './seam.ts';
export { pleat, tuck } from './pleat.ts';
export { sewRound } from './sew-round.ts';
export { size } from './size.ts';
export { trim } from './trim.ts';
export { turn } from './turn.ts';
export { unfold } from './unfold.ts';
export type { Along } from './place.ts';
export type { Attach } from './attach.ts';
export type { Bind } from './bind.ts';
export type { BoxCorner } from './box.ts';
export type { ClothFault } from './fault.ts';
export type { Cut } from './cut.ts';
export type { ExposedEdge } from './exposed.ts';
export type {
  EdgeFinish,
  StepRecord,
  LaidWork,
  Mark,
  MetEdge,
  Ply,
  PlyEdge,
  PlyOutline,
  SewnRound,
  Run,
  Sewn,
  Stitch,
  StitchKind,
  Work,
} from './work.ts';
export type { FlatFelledSeam, FrenchSeam } from './enclosed.ts';
export type { Fold } from './fold.ts';
export type { Fuse, Lay } from './lay.ts';
export type { Gather } from './gather.ts';
export type { Hem } from './hem.ts';
export type { Transform } from '../geometry/transform.ts';
export type { PleatLine, Pleats, Tuck } from './pleat.ts';
export type { RowPlace } from './stitch.ts';
export type { Seam, SeamLayer } from './seam.ts';
export type { SewRound } from './sew-round.ts';
export type { Size } from './size.ts';
export type { Trim } from './trim.ts';
export type { EdgeReference, WorkEdge } from './edge.ts';
export { freeEdges } from './free-edges.ts';
export { layerMap, middleOf, thickest } from './layer-map.ts';
export { countLayers, layersAt, layersInWords, stackThickness } from './layers.ts';
export { outlineNow } from './outline-now.ts';
export { section } from './section.ts';
export { visibleMarks, visibleFrom } from './visible.ts';
export { stitchLines } from './stitch-lines.ts';
export { bendAllowance, turnOfCloth } from './turn-of-cloth.ts';
export type { FreeEdge } from './free-edges.ts';
export type { Region } from './layer-map.ts';
export type { ThicknessOf } from './layers.ts';
export type { Patch } from './faces.ts';
export type { Section, SectionColumn, SectionEnd, SectionLayer, SectionTurn } from './section.ts';
export type { EdgeStretch, SeenFrom, Visible, VisiblePart } from './visible.ts';
export type { StitchLine, StitchStretch } from './stitch-lines.ts';
export type { TurnedLayer } from './turn-of-cloth.ts';
