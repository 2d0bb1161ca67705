import { cutSentences } from '../drawing/cut-words.ts';
import { drawLayout } from '../drawing/layout.ts';
import { lengthWriter } from '../drawing/lengths.ts';
import { surfaceOf } from '../drawing/surface.ts';
import { clothNeed, isByLength, isCloth, kitFor, ONE, stripWords, kitRows } from '../kit/index.ts';
import { THIN } from '../measure/index.ts';
import { cutList, materialsList } from '../project/lists.ts';
import { matchWords, printOf } from '../project/matching.ts';
import { figure, heading, paragraph, row, table, together, toTick } from './blocks.ts';
import { flow } from './flow.ts';
import { madeAs } from './handout.ts';
import { typeOf } from './type.ts';
import type { Pattern } from '../project/pattern.ts';
import type { Block } from './flow.ts';
import type { Handout, HandoutSetting } from './handout.ts';

/** What to cut, with a box to tick for each piece, and how the pieces lie on each cloth. */
export function cuttingList(pattern: Pattern, setting: HandoutSetting): Handout {
  const { set } = lengthWriter(pattern);
  const type = typeOf(setting);
  const rows = cutList(pattern);
  const blocks = [
    ...paragraph('Every size is the size to cut, with its seam allowances. Measure twice.', type),
    ...table(
      [
        { title: 'Piece', share: 2.8 },
        { title: 'Cut', share: 0.7 },
        { title: 'From', share: 2.4 },
        { title: 'Width', share: 1.4 },
        { title: 'Height', share: 1.4 },
        { title: 'Grain', share: 1.6 },
        { title: 'Notes', share: 4 },
      ],
      rows.map(({ label, count, from, size, grain, notes }) =>
        row([label, String(count), from, set(size.width), set(size.height), grain, held(notes.join('; '))], true),
      ),
      type,
    ),
    ...layouts(pattern, setting),
  ];
  return list('cutting-list', 'Cutting list', pattern, setting, rows.length === 0 ? [] : blocks);
}

/** How tall a layout is drawn, in mm at the size of the small type. */
const TALL = 105;

/** Each cloth with its pieces, for one maker, and the length to buy. */
function layouts(pattern: Pattern, setting: HandoutSetting): Block[] {
  const type = typeOf(setting);
  const { set } = lengthWriter(pattern);
  const labels = Object.fromEntries(Object.values(pattern.pieces).map(({ name, label }) => [name, label]));
  return Object.values(pattern.materials).flatMap((role): Block[] => {
    const need = isCloth(role) || isByLength(role) ? clothNeed(pattern, role, 1) : undefined;
    if (!need || !('layout' in need)) return [];
    const { layout, width, washed, findings } = need;
    const [laid] = layout.cloths;
    const troubles = findings.flatMap(({ message, severity }) =>
      severity === 'note' ? [] : paragraph(held(message), type),
    );
    if (!laid) return troubles;
    const shown = layout.proven ? 'No layout is shorter.' : `None can be shorter than ${set(layout.bound.length)}.`;
    const wide =
      washed < width - 0.05 ? `${set(washed)} wide once washed (${set(width)} in the shop)` : `${set(width)} wide`;
    const words = `Laid out on cloth ${wide}, the pieces take ${set(layout.length)}. ${shown}`;
    const surface = surfaceOf({ material: role.role }, pattern.materials);
    const fit = { width: type.width / type.drawing, height: TALL };
    const [match, print] = [matchWords(pattern, role.role), printOf(pattern, role.role)];
    const scene = drawLayout(laid, {
      ...pattern,
      ...{ labels, title: role.label, surface, fit },
      ...(print && { print }),
    });
    const cuts = cutSentences(laid, { labels, set });
    return [
      ...heading(`How to lay it: ${role.label}`, type),
      ...troubles,
      ...together(
        paragraph(
          held([words, match, stripWords(pattern, role.role, washed)].filter((one) => one !== undefined).join(' ')),
          type,
        ),
      ),
      figure(scene, 0, type, `layout ${role.role}`),
      ...(cuts.length > 0 ? together(paragraph('The cuts, in order:', type, { strong: true, after: 0.6 })) : []),
      ...cuts.flatMap((cut) => toTick(cut, type)),
    ];
  });
}

/** A measure is never broken before its unit. */
const held = (text: string): string => text.replace(/(\d) (?=(?:mm|cm|in)\b)/gu, `$1${THIN}`);

/** What one maker buys and has at hand, with a box to tick. */
export function materialsSheet(pattern: Pattern, setting: HandoutSetting): Handout {
  const type = typeOf(setting);
  const { lines, findings } = kitFor(pattern, ONE);
  const kit = lines.flatMap((line) => kitRows(line, pattern.edition));
  // What cannot be worked out is needed all the same.
  const others = materialsList(pattern).filter(({ role }) => !lines.some(({ key }) => key === role));
  const rows = [
    ...kit.map(({ key, label, material, pieces, buy, how, note = '' }) => {
      const parts = how.map(({ what, amount }) => `${amount} ${what}`).join('; ');
      const by = [parts, note].filter((words) => words !== '').join('. ');
      return row([label, material, key === 'needles' ? '' : pieces.join(', '), buy, by], true);
    }),
    ...others.map(({ label, material, pieces, note = '' }) =>
      row([label, material, pieces.join(', '), '', note], true),
    ),
  ];
  const blocks = [
    ...table(
      [
        { title: 'What', share: 2.6 },
        { title: 'Material', share: 2.6 },
        { title: 'For', share: 2.6 },
        { title: 'Buy', share: 2.6 },
        { title: 'Notes', share: 4.4 },
      ],
      rows,
      type,
    ),
    ...findings.flatMap(({ message }) => paragraph(held(message), type)),
  ];
  return list('materials-list', 'Materials list', pattern, setting, blocks);
}

function list(
  name: string,
  title: string,
  pattern: Pattern,
  setting: HandoutSetting,
  blocks: readonly Block[],
): Handout {
  const nothing = 'This project has nothing of the kind yet, so there is nothing to print.';
  const empty = blocks.length === 0;
  return {
    name,
    title: `${pattern.title}: ${title.toLowerCase()}`,
    language: setting.language ?? 'en',
    reader: 'maker',
    paper: setting.paper,
    pages: flow(
      empty ? paragraph(nothing, typeOf(setting)) : blocks,
      { title, project: madeAs(pattern), edition: pattern.edition },
      setting,
    ),
    findings: empty ? [`${title}: ${nothing}`] : [],
  };
}
