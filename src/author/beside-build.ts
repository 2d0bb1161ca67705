import type { ChildProcess } from 'node:child_process';
import { keepAhead } from '../../components/words/ahead.ts';
import { workAhead } from '../../components/words/shows.ts';
import { leave } from '../site/pages/beside.ts';
import { examine, type Examined } from '../site/check/find-content-problems.ts';
import { shelvesOf } from '../site/pages/loader.ts';
import type { Word } from '../site/integration.ts';
import { isError } from '../site/content/problem.ts';
import { projectOfLesson, readContent } from '../site/content/read-content.ts';
import type { Content } from '../site/content/read-content.ts';
import { report } from '../site/check/report.ts';
import { bundleWorkers } from '../site/pages/workers.ts';
import { makePages } from './make-pages.ts';

/**
 * What is done beside a build while Astro gets ready. The content is checked: with mistakes the build is ended before it
 * has written or said anything. Without, it may go on; its workers are put together, and as the core is at hand, what
 * lessons show of the making is worked out for it. Then this process makes a share of the pages, until the build hangs up.
 *
 * @param build Astro's own process, with a channel to it and its output held back
 * @param root the folder that holds content/
 * @param file where the build looks for what was read
 */
export async function besideBuild(build: ChildProcess, root: string, colour: boolean, file: string): Promise<void> {
  const content = readContent(root);
  leave(file, shelvesOf(content));
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
    if (typeof word === 'object' && 'shown' in word) keepAhead(word);
  }
}

/** Comes back once the word is under way: who hangs up before cuts it off. */
const say = (build: ChildProcess, word: Word): Promise<void> =>
  new Promise((resolve) => build.send(word, () => resolve()));

async function* words(root: string, content: Content, worked: Examined['worked']): AsyncGenerator<Word> {
  yield 'all is well';
  yield { workers: await bundleWorkers(root).catch(() => undefined) }; // Astro will say what is wrong
  const edition = content.site.value?.edition;
  if (!edition) return;
  for (const [project, { variants }] of worked)
    yield workAhead(project, variants[0][edition], [MADE, ...wordsOn(project, content)]);
}

/** What every project's page shows. */
const MADE = { name: 'Made', attributes: {} };

/** The words of all lessons about a project. */
const wordsOn = (project: string, { lessons, courses }: Content) =>
  lessons
    .filter((lesson) => projectOfLesson(lesson, courses) === project)
    .flatMap(({ lesson }) => lesson.words)
    .map(({ name, attributes }) => ({
      name,
      attributes: Object.fromEntries(attributes.map(({ name, value }) => [name, value])),
    }));
