/**
 * How people say what a verb does. Every verb is known by its own name; these words are said beside it. Common practice,
 * no source. They stand here and not with the verbs, because lessons ship those.
 */
import type { VerbName } from '../steps/index.ts';

/**
 * What tells of a verb for sure, and what may tell of it and is said of much else. Of a phrase each word is said in this
 * order, with a few others between: “bring the top edge down to the middle” is “bring middle”.
 */
type Sayings = {
  surely: string;
  perhaps?: string;
  /** Its name is said of everything: put. */
  notByName?: true;
};

const sayings: Partial<Record<VerbName, Sayings>> = {
  attach: {
    surely:
      'attach, snap, magnet, popper, press stud, prong, eyelet, rivet, hammer, slip on, thread on, thread through, slide onto, hook on, button on',
    perhaps: 'set, put on, fasten, push through, hole, thread',
  },
  baste: {
    surely:
      'baste, tack, tack down, long stitch, longest stitch, stay stitch, machine tack, hold in place, hold in place for now',
    perhaps: 'inside the seam allowance, keep in place, hold them, glue, a few stitches',
  },
  bind: { surely: 'bind, binding, bias', perhaps: 'wrap round, wrap around, wrap to back, miter, fold over edge' },
  'box corner': {
    surely: 'box, boxed, boxing, box corner, pinch corner, flat bottom, square off, square bottom',
    perhaps: 'pinch, triangle, across corner, seam on seam, bottom seam',
  },
  buttonhole: { surely: 'buttonhole, button hole' },
  casing: { surely: 'casing, channel, tunnel', perhaps: 'drawstring, rod through, turn down' },
  'clip corners': {
    surely: 'clip corner, snip corner, nip corner, trim corner, cut corner, cut across corner, corner off, points off',
    perhaps: 'clip, snip, nip, corners',
  },
  'close gap': {
    surely:
      'close gap, close hole, close opening, sew gap, stitch gap, sew opening, gap shut, hole shut, opening shut, slip stitch, ladder stitch, whip stitch, hand sew, sew by hand, close by hand, hand needle',
    perhaps: 'gap, hole, opening, close, by hand, shut',
  },
  'cut apart': {
    surely:
      'cut apart, subcut, crosscut, slice, cut across strip, chop every, cut every, cut into pieces, chop up, cut into slices',
    perhaps: 'chop, cut, every, segment',
  },
  dart: { surely: 'dart, sew to the point, dart leg', perhaps: 'taper, toward point, towards point, to nothing' },
  draw: {
    surely:
      'thread elastic, feed elastic, draw elastic, pull elastic, insert elastic, elastic through, feed through, thread cord, draw cord, pull cord, cord through, thread drawstring, drawstring through, safety pin',
    perhaps: 'elastic, feed, pull through, thread through, cord, drawstring, bodkin',
    notByName: true,
  },
  edgestitch: {
    surely:
      'edgestitch, edge stitch, close to edge, near edge, close as you can, stitch open edge, stitch open side, sew open side, right along edge, on the edge',
    perhaps: 'stitch, sew, row, run down, top stitch',
  },
  finish: {
    surely:
      'finish edge, finish seam, overcast, zigzag, zig zag, serge, overlock, pinking shears, neaten, stop it fraying',
    perhaps: 'finish, pink, fray',
  },
  'flat-felled seam': { surely: 'flat fell, felled' },
  fold: {
    surely:
      'fold, press under, fold under, turn under, go under, goes under, tuck under, bring middle, bring centre, bring center, to the middle, to the centre, to the center, meet in the middle, close like book, double over, fold in half, in half, lengthwise, lengthways, bend, bring in, bring over, bring up, bring down, bring together, close up, fold back, flap down',
    perhaps: 'crease, press, under, bring, middle, turn, down, wrap, together',
  },
  'fold in four': {
    surely:
      'fold in four, folded in four, long edge, long side, short one, long edges to the middle, long sides to the middle, edge to the middle, to the middle, to the centre, to the center, meet in the middle, in half again, in half lengthways, in half lengthwise, four layers thick, close like book, stitch open side, sew open side',
    perhaps: 'strap, tie, handle, fold, edge, middle, centre, center, in half, again, open side',
  },
  'french seam': { surely: 'french seam', perhaps: 'enclosed, wrong sides together' },
  fuse: {
    surely: 'fuse, fusing, iron on, bond, glue side, shiny side, bumpy side, rough side, stiffen, stick to',
    perhaps: 'stick, glue, press, iron, hot, lift, cool',
  },
  gather: {
    surely: 'gather, gathering stitch, ruffle, pull thread, pull up',
    perhaps: 'pull, even out, long stitch, bunch',
  },
  grade: { surely: 'grade, grading, layer the seam' },
  hem: {
    surely:
      'hem, double fold, fold twice, turn twice, fold again, turn again, fold a second time, turn a second time, press again, roll, mitre',
    perhaps:
      'turn under, turn in, turn over, turn down, fold under, fold over, fold down, raw edge under, sew down, press, fold, turn',
  },
  join: {
    surely:
      'join, sew together, stitch together, run together, attach to, sew across, stitch across, sew to, sew onto, right sides together',
    perhaps:
      'seam, face to face, face down, put together, sew, stitch, put in, lay on, put on, on top, together, sew on, match',
  },
  lay: {
    surely:
      'lay, place, put on, put at, pop on, pop over, position, set on, goes on, go on, goes over, goes at, goes to, goes below, sits on, slide over, slide under, line up, on top, lay over, overlap, centre on, center on, lap over, comes over',
    perhaps: 'pin, clip, put, goes, sits, measure down, measure in, match, level with, even with, against',
  },
  pipe: {
    surely: 'pipe, piping, piped, piping cord, round the cord, around the cord, welt, cord in the fold',
    perhaps: 'cord, zip foot, snug, close to the cord, raw edges together, clip, overlap',
  },
  pleat: { surely: 'pleat, mountain, valley, accordion', perhaps: 'fold up, fold, tick, notch' },
  press: { surely: 'press, iron, give it a press', perhaps: 'steam' },
  'quarter turn': { surely: 'quarter turn, rotate, turn sideways', perhaps: 'turn' },
  'join openings': {
    surely: 'sew round opening, sew around opening, sew round top, sew around top, all round opening',
    perhaps: 'opening, sew round, sew around, all round, top edge',
  },
  'push in': {
    surely: 'push in, push into, push down into, tuck into, shove in, stuff in, lining into bag',
    perhaps: 'push, inside',
  },
  put: {
    surely: 'put into, put inside, slip inside, slip into, drop inside, drop into, one inside the other, pull over',
    perhaps: 'inside, into',
    notByName: true,
  },
  quilt: {
    surely: 'quilt, quilting line, grid of lines, grid, stitch the layers, straight lines, walking foot, crosshatch',
    perhaps: 'lines, sew, stitch, layers',
  },
  'sew in rows': {
    surely: 'row, rows, sew the block, nest, seams nest, run together, sew halves, lay out blocks, sashing, join up',
    perhaps: 'sew together, sew, stitch, join, seam, block, flip, long side, chain piece',
  },
  'sew round': {
    surely:
      'all round, all around, way round, way around, sew round, sew around, stitch around, stitch round, right round, four sides, around the outside, round the outside, leave gap, leave open, turning gap, perimeter, three sides, sides and bottom, right sides together',
    perhaps: 'face to face, pivot, sew, stitch, gap, opening, sandwich, together, face down',
  },
  'sew up': {
    surely: 'sew up side, sew side, stitch side, sew up, sew down both sides',
    perhaps: 'sew, stitch, both sides, right sides together, together, gap',
  },
  topstitch: {
    surely:
      'topstitch, top stitch, stitch down, sew down, sew on, stitch on, sew along, stitch along, row of stitching, run a row, line of stitching, sew in place, stitch in place',
    perhaps:
      'sew, stitch, sew around, sew round, stitch around, three sides, edge stitch, visible, row, from the edge, from the fold, back stitch, along',
  },
  triangles: {
    surely:
      'half square, half square triangle, corner to corner, diagonal line, both sides of the line, either side of the line, hst, triangle',
    perhaps: 'diagonal, draw a line, sew',
  },
  trim: {
    surely:
      'trim, trim off, trim to, shorten, square up, cut off, cut straight across, cut down to, bring down to, cut to size, cut to length, trim down, shave',
    perhaps: 'cut, measure, mark, ruler',
  },
  tuck: { surely: 'tuck, tucks' },
  turn: {
    surely:
      'right side out, right sides out, right way out, right way, turn through, turn right, pull through, pull out, drag out, inside out, poke, push corner, push out, point turner, chopstick, knitting needle, reach in, through gap, through opening, turn out, turn it',
    perhaps: 'turn, corners, pull, push, hole',
  },
  'turn over': {
    surely:
      'flip, turn over, flip over, right side down, wrong side up, face down, other side up, upside down, back facing up, back up',
    perhaps: 'turn, facing',
  },
};

const listed = (text = ''): readonly string[] => (text === '' ? [] : text.split(', '));

/** What is said for a verb: its name, and other words and phrases, each on its own. */
export const saidFor = (verb: VerbName): readonly string[] => [
  ...(sayings[verb]?.notByName ? [] : [verb]),
  ...listed(sayings[verb]?.surely),
];

/** What may tell of a verb, and is said of others as well. */
export const perhapsFor = (verb: VerbName): readonly string[] => listed(sayings[verb]?.perhaps);
