/**
 * npm run script: what to say and what to show when a project is recorded, step by step.
 *
 *     npm run script -- swatch-folio
 *     npm run script -- swatch-folio --to folio-script.txt
 */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { cautions } from '../../components/words/caution/cautions.ts';
import { inEditions } from '../../components/words/recording/view.ts';
import { closeUpsOf, cutList, didYouMean, formatLength, makeUp, materialsList, verbNamed } from '../core/index.ts';
import type { Edition, Pattern, Step } from '../core/index.ts';
import type { MaterialsFile, ProjectFile } from '../core/project/schema.ts';
import { readContent } from '../site/content/read-content.ts';
import { readArguments, tell, type Command } from './arguments.ts';
import { refusalFor, writeAuthorFile, type Refusal } from './write-file.ts';

/** In minutes: a step that takes longer is shown in part, or nobody watches it to its end. Common practice, no source. */
const LONG = 6;

/** A script to record by, as plain text of at most 100 characters a line but for long sentences. */
export function scriptFor(file: ProjectFile, materials: MaterialsFile, edition: Edition): string {
  const patterns = inEditions(file, materials);
  const own = patterns[edition];
  const other = patterns[edition === 'inch' ? 'metric' : 'inch'];
  const steps = makeUp(own);
  const twins = new Map(makeUp(other).map((step) => [step.id, step]));
  const tools = [...new Set(steps.flatMap((step) => step.tools))];
  const parts = [
    [
      `Script: ${own.title}`,
      `${steps.length} steps, at the lesson’s own size. Sizes are said in ${EDITION[edition]} first.`,
    ].join('\n'),
    list('Lies ready before you begin', [
      ...materialsList(own).map(({ label, count }) => (count === undefined ? label : `${label}, ${count}`)),
      ...cutList(own).map(
        ({ label, count, size }) => `${label}${count > 1 ? `, ${count}` : ''}, cut ${spoken(size, own)}`,
      ),
      ...tools,
    ]),
  ];
  const used = new Set<string>();
  for (const [i, step] of steps.entries()) parts.push(stepText(step, i, steps, own, twins.get(step.id), other, used));
  return `${parts.join('\n\n')}\n`;
}

const EDITION = { inch: 'inches', metric: 'metric' } as const;
const list = (head: string, lines: readonly string[]): string =>
  [head, ...lines.map((line) => `  - ${line}`)].join('\n');

/** How a size is said aloud. */
const aloud = (mm: number, { edition, grid }: Pattern): string => formatLength(mm, edition, { grid, style: 'spoken' });
const spoken = ({ width, height }: { width: number; height: number }, pattern: Pattern): string =>
  `${aloud(width, pattern)} by ${aloud(height, pattern)}`;

function stepText(
  step: Step,
  i: number,
  steps: readonly Step[],
  own: Pattern,
  twin: Step | undefined,
  other: Pattern,
  used: Set<string>,
): string {
  const minutes = Math.max(1, Math.round(step.minutes.value));
  const fresh = [...step.takes.map((name) => own.pieces[name]?.label ?? name), ...step.tools].filter(
    (one) => !used.has(one),
  );
  for (const one of [...step.takes.map((name) => own.pieces[name]?.label ?? name), ...step.tools]) used.add(one);
  const measured = [
    `Now it measures ${spoken(step.size, own)}`,
    ...(twin ? [`in ${other.edition === 'inch' ? 'inches' : 'metric'} ${spoken(twin.size, other)}`] : []),
  ];
  const lines = [
    `${i + 1} of ${steps.length}  ${step.title} (${step.id}), about ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}`,
    ...(step.minutes.value > LONG
      ? ['  LONG: show the beginning and the end, and leave out what repeats itself.']
      : []),
    ...(fresh.length > 0 ? [`  At hand: ${fresh.join(', ')}`] : []),
    `  Say: ${step.title}.`,
    ...(step.note === undefined ? [] : [`  Say: ${step.note.replace(/\s+/g, ' ').trim()}`]),
    ...(step.advice === undefined ? [] : [`  Say: ${step.advice}`]),
    `  Say: ${measured.join(', ')}.`,
    ...step.cautions.flatMap((key) => {
      const sentence = cautions[key]?.sentences[0];
      return sentence === undefined ? [] : [`  Warn: ${sentence}`];
    }),
    ...closeUps(step, own).map((one) => `  Close-up: ${one}`),
  ];
  return lines.join('\n');
}

/** “the top, the left and the right”. */
const listed = (names: readonly string[]): string =>
  names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)}` : (names[0] ?? '');

/** What a camera comes near to: what the drawing of the step shows as done in it, and at which sides and corners. */
function closeUps(step: Step, own: Pattern): string[] {
  const verb = verbNamed(step.verb);
  const shots: string[] = [];
  for (const { says, length } of verb.measured?.(step.instruction) ?? [])
    shots.push(
      `the ruler, ${says
        .replace('…', aloud(length, own))
        .replace(/\.$/u, '')
        .replace(/^\p{Lu}/u, (one) => one.toLowerCase())}`,
    );
  for (const { what, places, corners, side } of closeUpsOf(step)) {
    const at = places.length > 0 ? ` at ${listed(places)}` : '';
    const back = side === 'back' ? ', from the back' : '';
    if (what === 'fold')
      shots.push(
        verb.pleats ? `the first pair of folds, from the side${back}` : `the fold${at}, as it is turned${back}`,
      );
    if (what === 'row' && places.length > 0)
      shots.push(`the row of stitches${at}, where it begins and where it ends${back}`);
    if (what === 'cut') shots.push(`the cut${at}, and the blades beside the stitches${back}`);
    if (what === 'hardware') shots.push(`both sides of the cloth${at}, before and after it is set`);
    if (corners.length > 0)
      shots.push(
        `the ${corners.length > 1 ? 'corners' : 'corner'} at ${listed(corners)}${what === 'row' ? ', as the row turns' : ''}${back}`,
      );
  }
  if (step.stitches.length > 0 && !shots.some((shot) => shot.startsWith('the row')))
    shots.push('the row of stitches, where it begins and where it ends');
  const thickest = Math.max(0, ...step.stitches.map(({ layers }) => layers));
  if (thickest > 4) shots.push(`the place where the needle goes through ${thickest} layers`);
  if (step.verb === 'turn') shots.push('a corner, before and after it is pushed out');
  return shots;
}

/** A script that is there already is written anew. */
function write(to: string, text: string): Refusal | undefined {
  try {
    return writeAuthorFile(to, text, { before: existsSync(to) ? readFileSync(to, 'utf8') : undefined });
  } catch (error) {
    return refusalFor(to, error);
  }
}

const COMMAND = {
  name: 'npm run script',
  about: 'Writes what to say and what to show when a project is recorded, step by step.',
  names: '<project>',
  choices: { to: { takes: 'FILE', about: 'where to write; it is printed if left out' } },
  examples: ['npm run script -- swatch-folio --to folio-script.txt'],
} as const satisfies Command;

function main(): void {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const asked = readArguments(COMMAND);
  if (!asked.ok) return tell(asked);
  const { values, names } = asked;
  const { projects, materials, site } = readContent(root);
  const [id] = names;
  const project = projects.find((one) => one.id === id);
  if (!project?.value) {
    const ids = projects.map((one) => one.id);
    if (project) console.error(`${project.file} has a mistake. Mend it first: npm run check tells where.`);
    else if (id === undefined)
      console.error(`Name a project: npm run script -- ${ids[0] ?? 'tote'}. There are: ${ids.join(', ')}.`);
    else console.error(`There is no project “${id}”. ${didYouMean(id, ids) ?? `There are: ${ids.join(', ')}.`}`);
    process.exitCode = 1;
    return;
  }
  const text = scriptFor(project.value, materials.value ?? {}, site.value?.edition ?? 'inch');
  if (values.to === undefined) console.log(text);
  else {
    const to = path.resolve(root, values.to);
    const refusal = write(to, text);
    if (refusal) {
      console.error(`Not written: ${refusal.message} ${refusal.fix}`);
      process.exitCode = 1;
    } else console.log(`Written: ${to}`);
  }
}

if (import.meta.main) main();
