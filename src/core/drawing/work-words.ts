import { withoutPiping } from '../cloth/piping.ts';
import { openingsOf } from '../cloth/openings.ts';
import { listed, SAME } from '../measure/index.ts';
import { boxOf, size } from '../cloth/size.ts';
import { countLayers, layersInWords } from '../cloth/layers.ts';
import { seenParts } from './work-shapes.ts';
import { visibleFrom } from '../cloth/visible.ts';
import { rowsOf } from './rows.ts';
import { hasNoSides, surfaceOf } from './surface.ts';
import { crossedAt, opensFor, teethIn } from '../project/zips.ts';
import { the } from '../steps/words.ts';
import { lengthWriter } from './lengths.ts';
import type { Ply, StitchKind, Work } from '../cloth/work.ts';
import type { SeenFrom } from '../cloth/visible.ts';
import type { PieceSetting } from './surface.ts';

/** What the drawings of works need to know, and what the work is called; left out, the names of its pieces. */
export type WorkSetting = PieceSetting & { name?: string };

/** What a work is called: the name given, or the names of its pieces. */
export function nameOf(work: Work, name?: string): string {
  const called = name ?? listed([...new Set(work.plies.map(({ piece }) => piece))]);
  return called.replace(/^\p{Ll}/u, (letter) => letter.toUpperCase());
}

/** What a ply is called that has no right and no wrong side. */
function sidesOf(ply: Ply, materials: PieceSetting['materials']): string | undefined {
  const surface = surfaceOf(ply, materials);
  return hasNoSides(surface) ? surface : undefined;
}

/** The face of a ply in words; interfacing and batting have none. */
export const faceWords = (ply: Ply, face: 'right' | 'wrong', { materials }: PieceSetting): string =>
  sidesOf(ply, materials) ?? `${face} side`;

/** The size in a sentence, with the depth that boxed corners give. */
export function sizeWords(work: Work, setting: PieceSetting): string[] {
  const { say } = lengthWriter(setting);
  const [flat, now] = [boxOf(withoutPiping(work).plies), size(work)];
  const lying = [
    `It lies ${say(flat.width)} wide and ${say(flat.height)} high.`,
    ...openingWords(work).map(([where, round]) => `${where} it is ${say(round)} round.`),
  ];
  if (now.depth === 0) return lying;
  return [
    ...lying,
    `Standing, it is ${say(now.width)} wide, ${say(now.height)} high and ${say(now.depth)} deep, from seam to seam.`,
  ];
}

/** How long a work is round at its openings, each by where it is; two alike are told once. */
function openingWords(work: Work): [string, number][] {
  const [first, ...others] = openingsOf(work);
  if (!first) return [];
  if (others.length === 0) return [['At the opening', first.round]];
  if (others.every(({ round }) => Math.abs(round - first.round) < SAME)) return [['At each opening', first.round]];
  return [first, ...others].map(({ name, round }) => [`At the ${name}`, round]);
}

/** What the drawing of flat work cannot show: how large it stands when its corners are boxed. */
export function standingNotes(work: Work, setting: PieceSetting): string[] {
  const { set } = lengthWriter(setting);
  const { width, height, depth } = size(work);
  const opens = zipWords(work, setting, set);
  const round = openingWords(work).map(([where, length]) => `${where} ${set(length)} round.`);
  return depth === 0
    ? [...opens, ...round]
    : [
        ...opens,
        ...round,
        `Standing: ${set(width)} wide, ${set(height)} high, ${set(depth)} deep, from seam to seam.`,
        ...(round.length === 1 ? [`It holds about ${litres(width * height * depth)}.`] : []),
      ];
}

/** A volume in mm³ as people say it: `0.7 litres`, `9.7 litres`, `24 litres`. */
function litres(volume: number): string {
  const all = volume / 1e6;
  const said = all < 10 ? all.toFixed(1) : Math.round(all).toString();
  return said === '1.0' ? '1 litre' : `${said} litres`;
}

/** How far the zips of a work open, where a row crosses their teeth. */
export const zipWords = (work: Work, { materials, pieces }: PieceSetting, say: (mm: number) => string): string[] =>
  (materials && pieces ? teethIn(work, { materials, pieces }) : []).flatMap((teeth) =>
    crossedAt(teeth, work).length === 0
      ? []
      : [`${the(teeth.ply.piece)} opens over ${say(opensFor(teeth, work))}.`.replace(/^t/u, 'T')],
  );

/** A ply named with the face that is up: cover, right side; interfacing is named alone. */
export const plyWords = (ply: Ply, { materials }: PieceSetting): string =>
  sidesOf(ply, materials) ? ply.piece : `${ply.piece}, ${ply.face} side`;

/** What is seen from a side, in a sentence. */
export function seenWords(work: Work, side: SeenFrom, setting: PieceSetting): string {
  const parts = seenParts(visibleFrom(work, side).parts);
  return `Seen from the ${side}: ${listed(parts.map(({ piece, ply, face }) => `${piece} (${faceWords(ply, face, setting)})`))}.`;
}

const rowNames: Record<StitchKind, string> = {
  seam: 'seam',
  topstitch: 'row of topstitching',
  edgestitch: 'row of edgestitching',
  hem: 'row along a hem',
  baste: 'row of basting',
  gather: 'gathering row',
  zigzag: 'row of zigzag',
  overlock: 'row of overlock stitches',
  slipstitch: 'row sewn by hand',
};

/** Each row of stitches, or those with the numbers asked for, in a sentence. */
export function rowWords(work: Work, setting: PieceSetting, only?: ReadonlySet<number>): string[] {
  const { say } = lengthWriter(setting);
  return rowsOf(work)
    .filter(({ id, length }) => length > 0 && (only?.has(id) ?? true))
    .map(({ kind, length, stretches }) => {
      const most = stretches.map(({ plies }) => countLayers(plies)).reduce((a, b) => (b.layers > a.layers ? b : a));
      const through = `${most.layers === 1 ? '' : 'at most '}${layersInWords(most)}`;
      return `A ${rowNames[kind]}, ${say(length)} long, through ${through}.`;
    });
}
