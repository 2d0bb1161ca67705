/** Whether the casings stay open for what is drawn through them. */
import { all } from '../../steps/words.ts';
import { closedChannels } from '../../cloth/channel.ts';
import { plainName, quote } from '../../measure/index.ts';
import type { Diagnostic } from '../../measure/index.ts';
import type { Step } from '../step.ts';

/**
 * A row of a later step that crosses the channel of a casing closes it: no cord and no elastic goes through. So do rows
 * that held the ends of a strip before it was sewn down as a casing.
 */
export const checkChannels = (steps: readonly Step[]): Diagnostic[] =>
  steps.flatMap((step): Diagnostic[] => {
    const { takes, before, after, place, stitches } = step;
    const known = takes.reduce((sum, name) => sum + before[name]!.stitches.length, 0);
    const found = closedChannels(after, known);
    const finding = (message: string, fix: string): Diagnostic => ({
      severity: 'error',
      place,
      code: 'casing-closed',
      message,
      fix,
    });
    const shutBefore = found.filter(({ madeNow }) => madeNow).map(({ piece }) => piece);
    const closed = found.filter(({ madeNow }) => !madeNow);
    const findings: Diagnostic[] = noWayIn(step);
    if (shutBefore.length > 0) {
      const message = `A row or seam of an earlier step crosses this casing of ${all(shutBefore)}: nothing can be drawn through.`;
      findings.push(finding(message, 'Leave the ends of the strip open, or end the strip beside that row.'));
    }
    if (closed.length > 0) {
      const isSeam = stitches.some(({ kind }) => kind === 'seam');
      const [casings, them] = closed.length === 1 ? ['the casing', 'it'] : ['the casings', 'them'];
      const message = `This ${isSeam ? 'seam' : 'row'} crosses ${casings} of ${all(closed.map(({ piece }) => piece))} and closes ${them}: nothing can be drawn through.`;
      const between = closed.every(({ isStrip }) => isStrip)
        ? ' Or end the strip beside the seam.'
        : ' Sewn after its side seams it goes all round: “at: opening”.';
      findings.push(finding(message, `Make the casing after this step.${isSeam ? between : ''}`));
    }
    return findings;
  });

/** A casing all round that nothing leads into. */
function noWayIn({ instruction, after, place, makes }: Step): Diagnostic[] {
  if (instruction.verb !== 'casing' || instruction['way in'] !== undefined) return [];
  if (!instruction.at.some((edge) => /(?:^|\s)opening$/u.test(plainName(edge)))) return [];
  if (after.marks.some(({ what }) => what === 'buttonhole')) return [];
  const message = `The casing of ${quote(makes)} goes all round, and nothing leads into it: no cord and no elastic can be drawn in.`;
  const fix = 'Leave a gap in its row, such as “way in: 1 in”, or sew a buttonhole into its outer layer before.';
  return [{ severity: 'warning', place, code: 'casing-no-way-in', message, fix }];
}
