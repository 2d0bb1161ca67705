import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { keepAhead, type DrawnAhead } from '../../components/making/drawn-ahead.ts';
import { isError } from './problem.ts';
import { report } from './report.ts';
import { workersInFiles, type Program } from './workers.ts';
import { writeWordExamples } from './word-examples.ts';

/** Set by a command that checks the content beside the build it has started, and sends word. */
export const CHECKED_BESIDE = 'CONTENT_IS_CHECKED_BESIDE';

/** What it sends: that the build may go on; then the workers; and, project by project, what pages will show. */
export type Word = 'all is well' | DrawnAhead | { workers: Program[] | undefined };

/**
 * Keeps mistakes in the content out of a built site, and shows them in the page while the site is being edited. Stands
 * before the MDX integration, so that a lesson with a mistake never reaches it.
 */
export function contentCheck(): AstroIntegration {
  const beside = process.env[CHECKED_BESIDE] ? listen() : undefined;
  return {
    name: 'content-check',
    hooks: {
      async 'astro:config:setup'({ command, config, addMiddleware, injectScript, updateConfig }) {
        const root = fileURLToPath(config.root);
        writeWordExamples(root);
        if (command === 'build' && !beside) {
          const { findContentProblems } = await import('./find-content-problems.ts');
          const mistakes = findContentProblems(root).filter(isError);
          if (mistakes.length) throw new ContentMistakes(report(mistakes));
        }
        updateConfig({ vite: { plugins: [workersInFiles(root, async () => beside?.workers)] } });
        if (command === 'dev') {
          const { livePreview } = await import('./live/live-preview.ts');
          updateConfig({ vite: { plugins: [livePreview(root)] } });
          injectScript('page', `import ${JSON.stringify(fileURLToPath(new URL('live/panel.ts', import.meta.url)))};`);
          addMiddleware({ order: 'pre', entrypoint: new URL('live/problem-page.ts', import.meta.url) });
        }
      },
      // From here on the site of before is taken down, and lessons are read by what cannot tell their mistakes.
      'astro:build:start': () => beside?.allIsWell,
      'astro:build:done'() {
        if (beside && process.connected) process.disconnect();
      },
    },
  };
}

/** What the other process says. Workers that are on their way when it hangs up do not come. */
function listen(): { allIsWell: Promise<void>; workers: Promise<Program[] | undefined> } {
  const well = Promise.withResolvers<void>();
  const workers = Promise.withResolvers<Program[] | undefined>();
  process.on('message', (word: Word) => {
    if (word === 'all is well') well.resolve();
    else if ('steps' in word) keepAhead(word);
    else if ('workers' in word) workers.resolve(word.workers);
  });
  process.once('disconnect', () => workers.resolve(undefined));
  return { allIsWell: well.promise, workers: workers.promise };
}

/** Where in the program it was thrown helps nobody, so it carries no stack. */
class ContentMistakes extends Error {
  override name = 'ContentMistakes';
  constructor(list: string) {
    super(`The site is not built. Mend these mistakes first:\n\n${list}`);
    this.stack = '';
  }
}
