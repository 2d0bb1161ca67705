/** The verbs of the step language, a file each, in the order in which they are listed. */
import { fuse } from './fuse.ts';
import { join } from './join.ts';
import { sewInRows } from './sew-in-rows.ts';
import { triangles } from './triangles.ts';
import { cutApart } from './cut-apart.ts';
import { sewRound } from './sew-round.ts';
import { sewUp } from './sew-up.ts';
import { put } from './put.ts';
import { joinOpenings } from './join-openings.ts';
import { pushIn } from './push-in.ts';
import { frenchSeam } from './french-seam.ts';
import { flatFelledSeam } from './flat-felled-seam.ts';
import { pleat } from './pleat.ts';
import { tuck } from './tuck.ts';
import { dart } from './dart.ts';
import { hem } from './hem.ts';
import { lay } from './lay.ts';
import { baste } from './baste.ts';
import { trim } from './trim.ts';
import { grade } from './grade.ts';
import { clipCorners } from './clip-corners.ts';
import { turnOver } from './turn-over.ts';
import { quarterTurn } from './quarter-turn.ts';
import { turn } from './turn.ts';
import { finish } from './finish.ts';
import { closeGap } from './close-gap.ts';
import { gather } from './gather.ts';
import { boxCorner } from './box-corner.ts';
import { bind } from './bind.ts';
import { pipe } from './pipe.ts';
import { casing } from './casing.ts';
import { draw } from './draw.ts';
import { attach } from './attach.ts';
import { buttonhole } from './buttonhole.ts';
import { fold } from './fold.ts';
import { foldStrip } from './fold-in-four.ts';
import { topstitch } from './topstitch.ts';
import { quilt } from './quilt.ts';
import { edgestitch } from './edgestitch.ts';
import { press } from './press.ts';

export const verbs = [
  fuse,
  join,
  sewInRows,
  triangles,
  cutApart,
  sewRound,
  sewUp,
  frenchSeam,
  flatFelledSeam,
  pleat,
  tuck,
  dart,
  hem,
  lay,
  baste,
  trim,
  grade,
  clipCorners,
  finish,
  turnOver,
  quarterTurn,
  turn,
  closeGap,
  put,
  joinOpenings,
  pushIn,
  gather,
  boxCorner,
  bind,
  pipe,
  casing,
  draw,
  attach,
  buttonhole,
  fold,
  foldStrip,
  topstitch,
  quilt,
  edgestitch,
  press,
] as const;
