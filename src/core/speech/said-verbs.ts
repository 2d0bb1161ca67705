/**
 * How people say what a verb does. Every verb is known by its own name and its step's title; these words are said beside
 * them. Common practice, no source. They stand here and not with the verbs, because lessons ship those.
 */
import type { VerbName } from '../steps/index.ts';

const said: Partial<Record<VerbName, string>> = {
  fuse: 'fuse, fusing, bond, stick, stiffen, iron on, glue side, shiny side, bumpy side',
  join: 'join, sew together, attach, stitch together, right sides together, seam, sew it to, sew on',
  'sew in rows': 'sew the rows, row, rows, sew the block, chain piece, nest the seams',
  triangles: 'half square triangle, half-square triangles, triangles, both sides of the diagonal, diagonal line',
  'cut apart': 'cut apart, subcut, crosscut, slice, cut across the strips',
  'sew round':
    'sew all the way round, all around, sew round, sew around, pivot, leave a gap, turning gap, right sides together, opening, perimeter',
  'french seam': 'french seam, wrong sides together, enclosed',
  'flat-felled seam': 'flat fell, felled',
  pleat: 'pleat, pleats, mountain, valley, accordion, fold up',
  tuck: 'tuck, tucks',
  dart: 'dart, darts, sew to the point, taper, dart leg, toward the point',
  hem: 'hem, turn under, turn in, fold under, double fold, fold over twice, fold it again, raw edge under, mitre, mitred corner',
  lay: 'lay, place, put on top, put, position, line up, on top of',
  baste: 'baste, tack, long stitch, longest stitch, hold in place, basting, hold them, inside the seam allowance',
  trim: 'trim, trim off, cut off, square up',
  grade: 'grade, layer the seam, grading',
  'clip corners': 'clip, corners, snip, cut across, nip, trim the corners',
  finish: 'finish the edge, overcast, zigzag, zig zag, serge, overlock, pink, pinking shears, neaten, stop it fraying',
  'turn over': 'flip, turn over, turn it over',
  'quarter turn': 'quarter turn, rotate',
  turn: 'turn right side out, turn it through, right way out, turn, poke, push the corners out, point turner, chopstick, inside out',
  'close gap':
    'close the gap, slip stitch, ladder stitch, by hand, hand sew, close the opening, whip stitch, hand needle',
  gather: 'gather, gathering stitch, ruffle, pull the threads, pull up',
  'box corner': 'box, boxed, boxing, pinch, flat bottom, square off, triangle, corner',
  bind: 'bind, binding, bias, wrap around the edge',
  casing: 'casing, channel, tunnel, drawstring',
  attach: 'attach, snap, magnet, popper, press stud, set, prongs, hole, hammer, fasten, button',
  buttonhole: 'buttonhole, button hole',
  fold: 'fold, fold over, fold down, crease, bring down, close',
  topstitch:
    'topstitch, top stitch, on the right side, edge stitch, all along the top, visible, stitch down, sew down, sew it on, stitch it on, row of stitching',
  quilt: 'quilt, quilting, quilting lines, rows across, grid of lines, stitch the layers',
  edgestitch: 'edgestitch, edge stitch, close to the edge',
  press: 'press, iron, give it a press',
};

/** What is said for a verb: its name, and other words and phrases, each on its own. */
export const saidFor = (verb: VerbName): readonly string[] => [verb, ...(said[verb]?.split(', ') ?? [])];
