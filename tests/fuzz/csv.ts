/** Tables for spreadsheets: no reader sees a formula in a cell of texts, and each cell reads back as it was. */
import { csv } from '../../src/core/index.ts';
import { family } from './family.ts';
import { ODD, piecesOf } from './texts.ts';

const PIECES = [
  ...[
    '=',
    '+',
    '-',
    '@',
    '＝',
    '＋',
    '－',
    '＠',
    '"',
    '""',
    "'",
    ',',
    ';',
    '\t',
    '\r',
    '\n',
    '\r\n',
    ' ',
    '\u3000',
    '|',
  ],
  ...['1+1', 'SUM(A1)', "cmd|' /C calc'!A0", 'Ada', 'ß', '12', 'HYPERLINK("x")', '\ufeff'],
  ...ODD,
];

/** The cells of a text as a spreadsheet reads it (RFC 4180): quotes hold a cell together if it begins with one. */
function cellsOf(text: string, separator: string, minds: boolean): string[][] {
  const rows: string[][] = [];
  let [row, cell, inside, isFresh] = [[] as string[], '', false, true];
  const endCell = () => {
    row.push(cell);
    [cell, isFresh] = ['', true];
  };
  for (let i = 0; i < text.length; i++) {
    const sign = text[i]!;
    if (inside) {
      if (sign !== '"') cell += sign;
      else if (text[i + 1] === '"') cell += text[++i]!;
      else inside = false;
    } else if (minds && sign === '"' && isFresh) [inside, isFresh] = [true, false];
    else if (sign === separator) endCell();
    else if (sign === '\r' || sign === '\n') {
      if (sign === '\r' && text[i + 1] === '\n') i++;
      endCell();
      rows.push(row);
      row = [];
    } else [cell, isFresh] = [cell + sign, false];
  }
  if (cell !== '' || row.length > 0) rows.push([...row, cell]);
  return rows;
}

/** Whether a program may take a cell for a formula; blanks, quotes and what is not seen before the sign do not help. */
const isFormula = (cell: string): boolean => /^[\p{Z}\p{C}"]*[=+\-@＝＋－＠﹢﹣﹦﹫−]/u.test(cell);

export const tables = family<string[][]>({
  name: 'csv',
  makes: (from) => {
    const width = 1 + from.below(3);
    return Array.from({ length: 1 + from.below(2) }, () =>
      Array.from({ length: width }, () => piecesOf(from, PIECES, 6)),
    );
  },
  broken(rows) {
    const text = csv(rows);
    const lines: string[] = [];
    for (const [separator, minds] of [
      [',', true],
      [';', true],
      [';', false],
      ['\t', true],
      ['\t', false],
    ] as const)
      for (const cell of cellsOf(text, separator, minds).flat())
        if (isFormula(cell)) lines.push(`with ${JSON.stringify(separator)} a cell is ${JSON.stringify(cell)}`);
    const bare = (all: readonly (readonly string[])[]) => JSON.stringify(all).replaceAll("'", '');
    const back = cellsOf(text, ',', true);
    if (bare(back) !== bare(rows)) lines.push(`reads back as ${JSON.stringify(back)}`);
    return lines;
  },
});
