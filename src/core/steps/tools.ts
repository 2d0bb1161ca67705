/** The tools of the sewing room, and what can hurt. Common practice, no source. */

/** What can hurt in a step; the keys of the cautions on a lesson page. */
export type CautionKey = 'blade' | 'scissors' | 'pins' | 'needle' | 'iron' | 'coating' | 'snap' | 'magnet';

/** What a list calls each tool, and what can hurt when it is used. */
export const tools = {
  machine: { label: 'sewing machine', caution: 'needle' },
  iron: { label: 'iron', caution: 'iron' },
  'press cloth': { label: 'press cloth' },
  ruler: { label: 'ruler' },
  scissors: { label: 'scissors', caution: 'scissors' },
  cutter: { label: 'rotary cutter', caution: 'blade' },
  mat: { label: 'cutting mat' },
  pins: { label: 'pins', caution: 'pins' },
  clips: { label: 'clips' },
  pen: { label: 'marking pen' },
  'point turner': { label: 'point turner' },
  needle: { label: 'hand needle' },
  'setting tool': { label: 'setting tool' },
  awl: { label: 'awl' },
} as const satisfies Record<string, { label: string; caution?: CautionKey }>;

export type Tool = keyof typeof tools;

/** What hardware can be, where it matters to a step. */
export const hardware = ['snap', 'magnet', 'zip', 'button', 'ring', 'other'] as const;
export type Hardware = (typeof hardware)[number];

/** What steps need to know of a material. */
export type Material = {
  readonly label: string;
  /** The hottest iron it takes, in °C. */
  readonly heat?: number;
  /** Set where holes of pins and needles do not close again. */
  readonly holes?: 'stay';
  /** Of hardware: what it is. */
  readonly hardware?: Hardware;
};
