import { writer } from '../drawing/lengths.ts';
import { THIN } from '../measure/index.ts';
import { cutList, materialsList } from '../project/lists.ts';
import { paragraph, row, table } from './blocks.ts';
import { flow } from './flow.ts';
import { typeOf } from './type.ts';
import type { Pattern } from '../project/pattern.ts';
import type { Block } from './flow.ts';
import type { Handout, Setting } from './handout.ts';

/** What to cut, with a box to tick for each piece. */
export function cuttingList(pattern: Pattern, setting: Setting): Handout {
  const { set } = writer(pattern);
  const type = typeOf(setting);
  const rows = cutList(pattern);
  const blocks = [
    ...paragraph('Every size is the size to cut, with its seam allowances. Measure twice.', type),
    ...table(
      [
        { title: 'Piece', share: 3 },
        { title: 'Cut', share: 0.9 },
        { title: 'From', share: 2.6 },
        { title: 'Width', share: 1.6 },
        { title: 'Height', share: 1.6 },
        { title: 'Grain', share: 1.9 },
        { title: 'Notes', share: 3 },
      ],
      rows.map(({ label, count, from, size, grain, notes }) =>
        row([label, String(count), from, set(size.width), set(size.height), grain, held(notes.join('; '))], true),
      ),
      type,
    ),
  ];
  return list('cutting-list', 'Cutting list', pattern, setting, rows.length === 0 ? [] : blocks);
}

/** A measure is never broken before its unit. */
const held = (text: string): string => text.replace(/(\d) (?=(?:mm|cm|in)\b)/gu, `$1${THIN}`);

/** What to have at hand, with a box to tick. */
export function materialsSheet(pattern: Pattern, setting: Setting): Handout {
  const type = typeOf(setting);
  const rows = materialsList(pattern);
  const blocks = table(
    [
      { title: 'What', share: 3 },
      { title: 'Material', share: 3 },
      { title: 'For', share: 3 },
      { title: 'Number', share: 1.8 },
      { title: 'Notes', share: 4 },
    ],
    rows.map(({ label, material, pieces, count, note }) =>
      row([label, material, pieces.join(', '), count === undefined ? '' : String(count), note ?? ''], true),
    ),
    type,
  );
  return list('materials-list', 'Materials list', pattern, setting, blocks);
}

function list(name: string, title: string, pattern: Pattern, setting: Setting, blocks: readonly Block[]): Handout {
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
      { title, project: pattern.title, edition: pattern.edition },
      setting,
    ),
    findings: empty ? [`${title}: ${nothing}`] : [],
  };
}
