/** A small worked example of each verb of the trade, for the authoring reference: what one writes, and what it comes to. */
import { parse } from 'yaml';
import {
  check,
  drawStep,
  formatLength,
  makeUp,
  MaterialsFile,
  ProjectFile,
  resolveProject,
  verbNamed,
  verbNames,
} from '../../core/index.ts';
import type { Diagnostic, Edition, Scene, VerbName } from '../../core/index.ts';

export type VerbExample = {
  verb: VerbName;
  /** What the verb does, in its own words. */
  about: string;
  /** What an author writes: pieces and steps. */
  text: string;
  /** The step in a sentence, and how large the work then is. */
  comesTo: string;
  /** The drawing of the last step. */
  scene: Scene;
  /** What is wrong with it: nothing, or the reference would teach a mistake. */
  findings: Diagnostic[];
};

const HEAD = `title: An example
measures: { seam: { in: 1/2, mm: 12 } }
materials: { outer: linen, lining: lawn, stay: fusible, button: button, cord: cord, elastic: elastic }
`;

const shelf = MaterialsFile.parse({
  linen: { kind: 'cloth' },
  lawn: { kind: 'cloth', lining: true },
  fusible: { kind: 'interfacing' },
  cord: { kind: 'by length', width: { in: 1 / 4, mm: 6, source: 'an example' } },
  elastic: { kind: 'by length', width: { in: 1 / 2, mm: 12, source: 'an example' } },
  button: {
    kind: 'hardware',
    hardware: 'button',
    across: { in: 3 / 4, mm: 18, source: 'an example' },
    thickness: { mm: 3, source: 'an example' },
  },
});

const front = '  front: { from: outer, size: [8, 6] }';
const both = `${front}\n  back: { from: lining, size: [8, 6] }`;
const round = `steps:\n  - { sew round: [front, back], gap: { edge: bottom, length: 3 in }, makes: pad }`;
const bag = `steps:\n  - { sew round: [front, back], open: top, makes: bag }`;

const lined = `${front}
  back: { from: outer, size: [8, 6] }
  lining front: { from: lining, size: [8, 6] }
  lining back: { from: lining, size: [8, 6] }`;
const putIn = `${bag}
  - { sew round: [lining front, lining back], open: top, gap: { edge: bottom, length: 3 in }, makes: lining }
  - { turn: lining }
  - { put: lining, into: bag, together: right sides }`;

/** By verb: pieces, and steps of which the last shows it. */
const examples: Readonly<Partial<Record<VerbName, readonly [pieces: string, steps: string]>>> = {
  fuse: [
    `${front}\n  stiffening: { from: stay, like: front, inset: seam }`,
    'steps:\n  - { fuse: stiffening, to: front, inset: seam }',
  ],
  join: [both, 'steps:\n  - { join: [front, back], at: [right, left], press: open, makes: strip }'],
  'sew in rows': [
    '  dark: { from: outer, cut: 2, size: [4, 4] }\n  light: { from: lining, cut: 2, size: [4, 4] }',
    'steps:\n  - { sew in rows: [[dark, light], [light, dark]], seam: 1/4 in, makes: block }',
  ],
  triangles: [
    '  dark: { from: outer, size: [5, 5] }\n  light: { from: lining, size: [5, 5] }',
    'steps:\n  - { triangles: [dark, light], seam: 1/4 in, makes: unit }',
  ],
  'cut apart': [front, 'steps:\n  - { cut apart: front, every: 2 in, makes: strip }'],
  'sew round': [both, round],
  'sew up': [
    front,
    'steps:\n  - { fold: front, from: top, at: 3 in }\n  - { sew up: front, at: [left, right], makes: pouch }',
  ],
  put: [lined, putIn],
  'join openings': [lined, `${putIn}\n  - { join openings: bag }`],
  'push in': [lined, `${putIn}\n  - { join openings: bag }\n  - { turn: bag }\n  - { push in: lining, into: bag }`],
  'french seam': [both, 'steps:\n  - { french seam: [front, back], at: [right, left], makes: strip }'],
  'flat-felled seam': [both, 'steps:\n  - { flat-felled seam: [front, back], at: [right, left], makes: strip }'],
  pleat: [
    '  skirt: { from: outer, size: [16, 6], pleats: { on: top, kind: box, count: 2, depth: 1 } }',
    'steps:\n  - { pleat: skirt }',
  ],
  tuck: [front, 'steps:\n  - { tuck: front, from: top, at: 2 in, depth: 1/2 in }'],
  dart: [
    '  front: { from: outer, size: [8, 6], darts: [{ on: top, at: middle, width: 3/4, length: 3 }] }',
    'steps:\n  - { dart: front }',
  ],
  hem: [front, 'steps:\n  - { hem: front, at: bottom, fold: 1/4, then: 3/4 }'],
  lay: [
    `${front}\n  pocket: { from: lining, size: [4, 3] }`,
    'steps:\n  - { lay: pocket, on: front, from top: 1 1/2, from left: 2 }',
  ],
  baste: [front, 'steps:\n  - { baste: front, at: [left, right] }'],
  trim: [front, 'steps:\n  - { trim: front, at: top, by: 1 in }'],
  grade: [both, `${round}\n  - { grade: pad }`],
  'clip corners': [both, `${round}\n  - { clip corners: pad }`],
  finish: [both, `${bag}\n  - { finish: bag, at: [left, bottom, right], with: zigzag }`],
  'turn over': [front, 'steps:\n  - { turn over: front }'],
  'quarter turn': [front, 'steps:\n  - { quarter turn: front }'],
  turn: [both, `${round}\n  - { turn: pad }`],
  'close gap': [both, `${round}\n  - { turn: pad }\n  - { close gap: pad }`],
  gather: [front, 'steps:\n  - { gather: front, at: top, to: 5 in }'],
  'box corner': [both, `${bag}\n  - { box corner: bag, at: [bottom left, bottom right], square: 1 in, from: seam }`],
  bind: [
    `${front}\n  strip: { from: lining, size: [8, 2], allowance: 0 }`,
    'steps:\n  - { bind: front, with: strip, at: top, width: 1/2 }',
  ],
  pipe: [
    `${front}
  strip: { from: lining, size: [26, 1 3/4], grain: bias, allowance: 0 }
  cord: { from: cord, size: [25, { in: 1/4, mm: 6 }], allowance: 0 }`,
    'steps:\n  - { pipe: front, with: strip, cord: cord, at: all }',
  ],
  casing: [front, 'steps:\n  - { casing: front, at: top, width: 1 in, then: 1/4 }'],
  draw: [
    `${both}\n  elastic: { from: elastic, size: [22 * seam, seam], allowance: 0 }`,
    `${bag}\n  - { turn: bag }\n  - { casing: bag, at: opening, width: 5/4 * seam, then: 1/4, way in: 2 * seam }\n  - { draw: elastic, into: bag, to: 20 * seam, overlap: 2 * seam }`,
  ],
  attach: [both, `${round}\n  - { turn: pad }\n  - { attach: button, to: pad, at: [3 1/2, 4] }`],
  buttonhole: [both, `${round}\n  - { turn: pad }\n  - { buttonhole: pad, for: button, from top: 1 }`],
  fold: [front, 'steps:\n  - { fold: front, from: top, at: 2 in }'],
  'fold in four': [
    '  strap: { from: outer, size: [12, 4], allowance: 0 }',
    'steps:\n  - { fold in four: strap, ends in: 1/2, edgestitch: both sides }',
  ],
  topstitch: [front, 'steps:\n  - { topstitch: front, at: [left, bottom, right], by: 1/4 }'],
  quilt: [both, 'steps:\n  - { lay: front, on: back, makes: mat }\n  - { quilt: mat, every: 2 in }'],
  edgestitch: [front, 'steps:\n  - { edgestitch: front, at: top }'],
  press: [front, 'steps:\n  - { press: front }'],
};

/** The example of each verb, in the order of the verbs. */
export const verbExamples = (edition: Edition = 'inch'): VerbExample[] =>
  verbNames.flatMap((verb): VerbExample[] => {
    const example = examples[verb];
    if (!example) return [];
    const [pieces, steps] = example;
    const text = `pieces:\n${pieces}\n${steps}`;
    const pattern = resolveProject(ProjectFile.parse(parse(HEAD + text)), { edition, materials: shelf });
    const step = makeUp(pattern).at(-1)!;
    const { fields } = verbNamed(verb);
    const [wide, high] = [step.size.width, step.size.height].map((mm) => formatLength(mm, edition));
    return [
      {
        verb,
        about: fields[verb]!.about,
        text,
        comesTo: `${step.title}. It is then ${wide!} wide and ${high!} high.`,
        scene: drawStep(step, pattern),
        findings: check(pattern).filter(({ severity }) => severity === 'error'),
      },
    ];
  });
