import type { ChildProcess } from 'node:child_process';
import { draw, drawWhole } from '../../components/making/draw-step.ts';
import { keepAhead, type DrawnAhead } from '../../components/making/drawn-ahead.ts';
import { makeUp, type Edition } from '../core/index.ts';
import { examine, type Examined } from '../site/find-content-problems.ts';
import type { Word } from '../site/integration.ts';
import { isError } from '../site/problem.ts';
import { readContent } from '../site/read-content.ts';
import type { Content } from '../site/read-content.ts';
import { report } from '../site/report.ts';
import { bundleWorkers } from '../site/workers.ts';
import { makePages } from './make-pages.ts';

/**
 * What is done beside a build while Astro gets ready. The content is checked: with mistakes the build is ended before it
 * has written or said anything. Without, it may go on; its workers are put together, and as the core is at hand, the steps
 * are drawn for it. Then this process makes a share of the pages, until the build hangs up.
 *
 * @param build Astro's own process, with a channel to it and its output held back
 * @param root the folder that holds content/
 */
export async function besideBuild(build: ChildProcess, root: string, colour: boolean): Promise<void> {
  const content = readContent(root);
  const { problems, worked } = examine(content, root);
  if (problems.length) console.log(`${report(problems, colour)}\n`);
  if (problems.some(isError)) {
    build.kill();
    console.log('The site is not built. Mend the mistakes above first.');
    process.exit(1);
  }
  makePages(build);
  build.stdout?.pipe(process.stdout);
  build.stderr?.pipe(process.stderr);
  for await (const word of words(root, content, worked)) {
    if (!build.connected) return; // it has ended, and hears nothing more
    await say(build, word);
    if (typeof word === 'object' && 'steps' in word) keepAhead(word);
  }
}

/** Comes back once the word is under way: who hangs up before cuts it off. */
const say = (build: ChildProcess, word: Word): Promise<void> =>
  new Promise((resolve) => build.send(word, () => resolve()));

async function* words(root: string, { site }: Content, worked: Examined['worked']): AsyncGenerator<Word> {
  yield 'all is well';
  yield { workers: await bundleWorkers(root).catch(() => undefined) }; // Astro will say what is wrong
  if (site.value) yield* drawnAhead(site.value.edition, worked);
}

/** Every step that a lesson can show, project by project. */
function* drawnAhead(edition: Edition, worked: Examined['worked']): Generator<DrawnAhead> {
  for (const [project, { variants }] of worked) {
    const pattern = variants[0][edition];
    const steps = makeUp(pattern).flatMap((step) => {
      const scene = draw(pattern, step.id);
      return scene ? [[step.id, scene] as const] : [];
    });
    yield { project, steps: Object.fromEntries(steps), made: drawWhole(pattern) };
  }
}
