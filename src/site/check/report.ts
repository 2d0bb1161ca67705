import { styleText } from 'node:util';
import { counted, WORD } from '../content/diagnostic.ts';
import type { Diagnostic } from '../content/diagnostic.ts';

const COLOUR = { error: 'red', warning: 'yellow', note: 'cyan' } as const;

/**
 * The problems for a terminal: grouped by file, with a line that counts them.
 *
 * @param problems in reading order
 * @param colour whether the terminal shows colours
 */
export function report(problems: readonly Diagnostic[], colour = false): string {
  const paint = (format: Parameters<typeof styleText>[0], text: string) =>
    colour ? styleText(format, text, { validateStream: false }) : text;
  const files = Map.groupBy(problems, (problem) => problem.file);
  const lines: string[] = [];
  for (const [file, own] of files) {
    lines.push(paint('underline', file));
    const width = Math.max(...own.map(({ line, column }) => `${line}:${column}`.length));
    for (const { line, column, severity, message, fix } of own) {
      const place = `${line}:${column}`.padStart(width);
      lines.push(`  ${paint('dim', place)}  ${paint(COLOUR[severity], WORD[severity].padEnd(7))}  ${message}`);
      if (fix) lines.push(`${' '.repeat(width + 13)}${paint('dim', fix)}`);
    }
    lines.push('');
  }
  lines.push(counted(problems));
  return lines.join('\n');
}
