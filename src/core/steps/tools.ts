/** The tools of the sewing room, and what can hurt. Common practice, no source. */

/** What can hurt in a step; the keys of the cautions on a lesson page. */
export type CautionKey =
  'blade' | 'scissors' | 'pins' | 'needle' | 'iron' | 'coating' | 'snap' | 'magnet' | 'parts' | 'zip' | 'overlock';

/** What a list calls each tool, and what can hurt when it is used. */
export const tools = {
  machine: { label: 'sewing machine', caution: 'needle' },
  iron: { label: 'iron', caution: 'iron' },
  'press cloth': { label: 'press cloth' },
  ruler: { label: 'ruler' },
  'overlock machine': { label: 'overlock machine', caution: 'overlock' },
  scissors: { label: 'scissors', caution: 'scissors' },
  'pinking shears': { label: 'pinking shears', caution: 'scissors' },
  cutter: { label: 'rotary cutter', caution: 'blade' },
  mat: { label: 'cutting mat' },
  pins: { label: 'pins', caution: 'pins' },
  'safety pin': { label: 'safety pin', caution: 'pins' },
  clips: { label: 'clips' },
  pen: { label: 'marking pen' },
  'point turner': { label: 'point turner' },
  needle: { label: 'hand needle' },
  'setting tool': { label: 'setting tool' },
  awl: { label: 'awl' },
} as const satisfies Record<string, { label: string; caution?: CautionKey }>;

export type Tool = keyof typeof tools;

/**
 * The feet of a sewing machine, as steps call them. Which foot goes with what is common practice, no source: the manual of
 * the machine names its own.
 */
export const feet = {
  standard: 'standard foot',
  zip: 'zip foot',
  buttonhole: 'buttonhole foot',
  gliding: 'gliding (non-stick) foot',
  walking: 'walking foot',
} as const;

export type Foot = keyof typeof feet;

/** What hardware can be, where it matters to a step. */
export const hardware = ['snap', 'magnet', 'zip', 'button', 'ring', 'slider', 'hook', 'eyelet', 'other'] as const;
export type Hardware = (typeof hardware)[number];

/** How hardware of a kind is set: in what words, with which tools, and what can hurt. */
export type Setting = {
  readonly verb: string;
  readonly onto: 'on' | 'to' | 'in' | 'onto';
  readonly tools: readonly Tool[];
  readonly cautions: readonly CautionKey[];
  /** It slides on the cloth, which runs through it: no prong needs flat cloth, or several layers. */
  readonly slides?: true;
};

const riveted = { verb: 'Set', onto: 'on', tools: ['setting tool', 'ruler', 'awl'], cautions: ['snap'] } as const;
const sewnOn = { verb: 'Sew', onto: 'to', tools: ['needle', 'ruler', 'pen'], cautions: ['parts'] } as const;
const slipped = { verb: 'Slip', onto: 'onto', tools: [], cautions: ['parts'], slides: true } as const;

/**
 * How each kind is set. Prongs of a magnet go through two slits and are bent over by hand; what is sewn on needs a hand
 * needle; a hook to hang things on, a ring and a slider take a strap through them. Common practice, no source. A zip is no
 * thing at a point: it is sewn in as a piece.
 */
export const settings: Readonly<Record<Exclude<Hardware, 'zip'>, Setting>> = {
  snap: riveted,
  eyelet: { ...riveted, onto: 'in' },
  magnet: { verb: 'Set', onto: 'in', tools: ['ruler', 'pen', 'scissors'], cautions: ['magnet'] },
  button: sewnOn,
  ring: slipped,
  slider: slipped,
  hook: slipped,
  // What nobody has named may be a snap, or a magnet.
  other: { ...riveted, cautions: ['snap', 'magnet'] },
};

/** What steps need to know of a material. */
export type Material = {
  readonly label: string;
  /** The hottest iron it takes, in °C. */
  readonly heat?: number;
  /** Set where holes of pins and needles do not close again. */
  readonly holes?: 'stay';
  /** Of hardware: what it is. */
  readonly hardware?: Hardware;
  /** Of a button its diameter, of what is slipped on the widest strap that goes through, in mm. */
  readonly across?: number;
  /** Of one layer, or of a button, in mm. */
  readonly thickness?: number;
};
