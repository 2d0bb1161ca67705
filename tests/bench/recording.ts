/**
 * How long it takes to find the steps of a project in a recording: 15 minutes of machine captions and a quilt top of 70
 * steps. The recording is made up: it tells each step by its title, with talk of our own around it. Many of the steps are
 * alike and are told apart by nothing; how well steps are found is tested elsewhere. A program aligns a recording once, so
 * that the first time counts.
 *
 *     node tests/bench/recording.ts
 */
import { alignSteps, courseWords, makeUp, resolveProject, type SpokenLine } from '../../src/core/index.ts';
import { shelf } from '../core/project/files.ts';
import { linesOf } from '../core/speech/recording.ts';
import { LARGE, largeProject } from './large-project.ts';

const RUNS = 40;
const MINUTES = 15;
const WORDS_A_MINUTE = 150;
/** As many words stand in one line of captions. */
const IN_LINE = 8;

const pattern = resolveProject(largeProject({ ...LARGE, quilted: LARGE.quilted + 10 }), {
  edition: 'inch',
  materials: shelf(),
});
const steps = makeUp(pattern);
const words = courseWords(pattern);
const talk = linesOf('swatch-folio').flatMap(({ text }) => text.split(' '));

/** Each step by its title and talk behind it, without a full stop, cut into lines of even length. */
function recording(): SpokenLine[] {
  const share = Math.round((MINUTES * WORDS_A_MINUTE) / steps.length);
  const said = steps.flatMap(({ title }, i) => {
    const own = [
      'now',
      ...title
        .toLowerCase()
        .replace(/[^\p{L}\d\s/]/gu, '')
        .split(/\s+/u),
    ];
    return [...own, ...Array.from({ length: share - own.length }, (_, k) => talk[(i * share + k) % talk.length]!)];
  });
  const each = (MINUTES * 60 * IN_LINE) / said.length;
  return Array.from({ length: Math.ceil(said.length / IN_LINE) }, (_, i) => ({
    from: i * each,
    to: (i + 1) * each,
    text: said.slice(i * IN_LINE, (i + 1) * IN_LINE).join(' '),
  }));
}

const lines = recording();
const times: number[] = [];
const worked: number[] = [];
let told = 0;
for (let run = 0; run < RUNS; run++) {
  const [start, before] = [performance.now(), process.threadCpuUsage()];
  told = alignSteps(lines, steps, words).length;
  times.push(performance.now() - start);
  const { user, system } = process.threadCpuUsage(before);
  worked.push((user + system) / 1000);
}
if (told < steps.length / 3) throw new Error(`Only ${told} stretches of ${steps.length} steps were found.`);
const [first, firstWorked] = [times[0]!, worked[0]!];
const median = (list: number[]) => list.toSorted((a, b) => a - b)[Math.floor(RUNS / 2)]!.toFixed(0);
const spoken = lines.reduce((sum, { text }) => sum + text.split(' ').length, 0);
console.log(
  `alignment, ${MINUTES} minutes of ${spoken} words in ${lines.length} lines, ${steps.length} steps: ` +
    `first ${first.toFixed(0)} ms, then median ${median(times)} ms (at most 200); on the processor first ` +
    `${firstWorked.toFixed(0)} ms, then median ${median(worked)} ms; ${told} stretches found`,
);
