/** Whether the work measures what the file says, at a step and when it is finished. */
import { type Diagnostic, type Place, closest, quote, SAME, plainName } from '../../measure/index.ts';
import { plansOf } from './plan.ts';
import { openingsOf } from '../../cloth/openings.ts';
import { openOf } from './check-pockets.ts';
import { promisedIn } from '../finished.ts';
import { sayIn, sayThickness } from './say.ts';
import { layersInWords, size } from '../../cloth/index.ts';
import { stackOf } from './thickness.ts';
import type { Pattern, Size } from '../pattern.ts';
import type { Work } from '../../cloth/index.ts';
import type { Ledger } from '../step.ts';

export function checkSizes(pattern: Pattern, ledger: Ledger): Diagnostic[] {
  const { steps, results, finished } = ledger;
  const findings: Diagnostic[] = [];
  for (const { nowMeasures, size: made, place, makes, after } of steps) {
    if (!nowMeasures) continue;
    findings.push(
      ...compared(
        pattern,
        [...place, 'now'],
        makes,
        { ...made, work: after },
        nowMeasures,
        'this step says',
        'now-measures',
      ),
      ...roundDiffers(pattern, [...place, 'now', 'round'], makes, after, nowMeasures),
    );
  }
  const promised = pattern.finished;
  if (!promised || !pattern.making) return findings;
  if (finished === undefined)
    return promised.of === undefined ? findings : [...findings, ...notMade(pattern, promised.of)];
  const { place } = promisedIn(pattern.origin.file.finished!);
  const closed = results[finished]!;
  const unfolded = openOf(ledger);
  const isOpenOnly = place[1] === 'open';
  const last = isOpenOnly ? (unfolded ?? closed) : closed;
  findings.push(...compared(pattern, place, finished, measured(last), promised, 'the file promises', 'finished-size'));
  if (promised.open && !isOpenOnly) {
    if (unfolded) {
      const work = `${finished}, open,`;
      const at = ['finished', 'open'];
      findings.push(
        ...compared(pattern, at, work, measured(unfolded), promised.open, 'the file promises', 'finished-size'),
      );
    } else {
      const message = `No fold closes ${quote(finished)} in the end, so that it has no other size open.`;
      const fix = 'Fold it shut in the last step, or write its width and height alone.';
      findings.push({ severity: 'error', place: ['finished', 'open'], code: 'never-closed', message, fix });
    }
  }
  return [...findings, ...thicknessDiffers(pattern, finished, closed)];
}

/** Whether an opening is as long round as a step says. */
function roundDiffers(
  pattern: Pattern,
  place: Place,
  of: string,
  work: Work,
  { round: said, within = 0 }: { round?: number; within?: number },
): Diagnostic[] {
  if (said === undefined) return [];
  const openings = openingsOf(work);
  const code = 'now-measures';
  if (openings.length === 0) {
    const message = `${quote(of)} has no opening here that could be measured round.`;
    return [{ severity: 'error', place, code, message, fix: 'Leave “round” out.' }];
  }
  if (openings.some(({ round }) => Math.abs(round - said) <= within + SAME)) return [];
  const say = sayIn(pattern);
  const made = openings.map(({ name, round }) => (openings.length > 1 ? `${say(round)} at the ${name}` : say(round)));
  const amount = Math.min(...openings.map(({ round }) => Math.abs(round - said)));
  const message = `The opening of ${quote(of)} is ${made.join(' and ')} round; this step says ${say(said)}. That is ${say(amount)} off.`;
  const fix = 'It is measured along the edge from seam to seam, on both sides.';
  return [{ severity: 'error', place, code, message, fix, amount }];
}

/** A work and what it measures. */
type Made = Size & { work: Work };

const measured = (work: Work): Made => ({ ...size(work), work });

type Said = Partial<Size> & { within?: number };

function compared(
  pattern: Pattern,
  place: Place,
  of: string,
  made: Made,
  said: Said,
  who: string,
  code: string,
): Diagnostic[] {
  return (['width', 'height'] as const).flatMap((side) => {
    const promised = said[side];
    if (promised === undefined) return [];
    return differs(pattern, [...place, side], of, side, made, promised, said.within, who, code);
  });
}

function differs(
  pattern: Pattern,
  place: Place,
  of: string,
  side: 'width' | 'height',
  made: Made,
  said: number,
  within: number | undefined,
  who: string,
  code: string,
): Diagnostic[] {
  const off = made[side] - said;
  if (Math.abs(off) <= (within ?? 0) + SAME) return [];
  const say = sayIn(pattern);
  const [wide, more] = [side === 'width' ? 'wide' : 'high', off > 0 ? 'more' : 'less'];
  const about = within === undefined ? '' : `about `;
  const allowed = within === undefined ? '' : `, and it may be ${say(within)} off`;
  const message = `The steps make ${quote(of)} ${say(made[side])} ${wide}; ${who} ${about}${say(said)}. That is ${say(Math.abs(off))} ${more}${allowed}.`;
  return [
    {
      severity: 'error',
      place,
      code,
      message,
      fix: standsOut(pattern, made, side, said) ?? likeliest(pattern, off, side, made.work),
      amount: Math.abs(off),
    },
  ];
}

/** Layers are pressed, and cloth is never as thick as a table says: a quarter more or less is about the same. */
const ABOUT = 1 / 4;

function thicknessDiffers(pattern: Pattern, of: string, work: Work): Diagnostic[] {
  const said = pattern.finished?.thickness;
  if (said === undefined) return [];
  const { mm, layers } = stackOf(pattern, work)().thickest;
  const off = Math.abs(mm - said);
  if (off <= ABOUT * Math.max(mm, said)) return [];
  const message = `Closed, ${quote(of)} is about ${sayThickness(mm)} thick where it has ${layersInWords({ layers, fused: 0 })}; the file promises ${sayThickness(said)}.`;
  const fix = 'Check the thickness of the materials, or promise what they come to.';
  return [
    {
      severity: 'error',
      place: ['finished', 'closed', 'thickness'],
      code: 'finished-thickness',
      message,
      fix,
      amount: off,
    },
  ];
}

/** A flap or a handle that reaches beyond the rest, where the rest is as it was said. */
function standsOut(pattern: Pattern, { work }: Made, side: 'width' | 'height', said: number): string | undefined {
  const pieces = [...new Set(work.plies.map(({ piece }) => piece))];
  const out = pieces.find((piece) => {
    const plies = work.plies.filter((ply) => ply.piece !== piece);
    return plies.length > 0 && Math.abs(size({ ...work, plies })[side] - said) <= SAME;
  });
  if (out === undefined) return undefined;
  const whole = sayIn(pattern)(size(work)[side]);
  return `${quote(out)} stands out beyond the rest by that much: state the ${side} with it, ${whole}, or fold it in first.`;
}

/** A difference of a few seam allowances tells where to look. */
function likeliest({ making }: Pattern, off: number, side: 'width' | 'height', { stitches }: Work): string {
  const seamed = stitches.some(({ kind }) => kind === 'seam');
  const seams = making?.seam ? Math.abs(off) / making.seam : 0;
  const whole = Math.round(seams);
  if (seamed && whole >= 1 && whole <= 4 && Math.abs(seams - whole) * making!.seam! <= SAME) {
    const count = whole === 1 ? 'one seam allowance' : `${['', '', 'two', 'three', 'four'][whole]!} seam allowances`;
    return `That is ${count}: count the seams across the ${side} again.`;
  }
  return 'Check the sizes of the pieces, or state what the steps make.';
}

/** No step makes what is to be measured; one that could not be done has its own finding. */
function notMade(pattern: Pattern, of: string): Diagnostic[] {
  const { steps } = plansOf(pattern);
  const makers = steps.filter((step) => plainName(step.makes) === plainName(of));
  if (makers.some((step) => step.off === undefined)) return [];
  const [maker] = makers;
  const where = { place: ['finished', 'of'], start: 0, end: of.length };
  if (maker) {
    const message = `No step makes ${quote(of)} now: step ${maker.n} is left out with ${quote(maker.off!)} as it is.`;
    return [{ severity: 'error', ...where, code: 'option-breaks-step', message }];
  }
  const meant = closest(of, [...steps.map((step) => step.makes), ...Object.keys(pattern.pieces)]);
  const message = `No step makes ${quote(of)}.`;
  const fix = meant === undefined ? `Write “makes: ${of}” at the last step.` : `Do you mean ${quote(meant)}?`;
  return [{ severity: 'error', ...where, code: 'not-made', message, fix }];
}
