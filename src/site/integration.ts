import { existsSync, readdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import type { Plugin } from 'vite';
import { keepAhead, type Ahead } from '../../components/words/ahead.ts';
import { CHECKED_BESIDE } from './pages/beside.ts';
import { isError } from './content/problem.ts';
import { report } from './check/report.ts';
import { workersInFiles, type Program } from './pages/workers.ts';
import { writeWordExamples } from './pages/word-examples.ts';

/**
 * What the command beside a build sends: that the build may go on; then the workers; and, project by project, what pages
 * will show.
 */
export type Word = 'all is well' | Ahead | { workers: Program[] | undefined };

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
          const { findContentProblems } = await import('./check/find-content-problems.ts');
          const mistakes = findContentProblems(root).filter(isError);
          if (mistakes.length) throw new ContentMistakes(report(mistakes));
        }
        updateConfig({
          vite: {
            build: { emptyOutDir: false }, // once all is well
            plugins: [
              onceAllIsWell(config.outDir, beside?.allIsWell),
              workersInFiles(root, async () => beside?.workers),
            ],
          },
        });
        if (command === 'dev') {
          const { livePreview } = await import('./live/live-preview.ts');
          updateConfig({ vite: { plugins: [livePreview(root)] } });
          injectScript('page', `import ${JSON.stringify(fileURLToPath(new URL('live/panel.ts', import.meta.url)))};`);
          addMiddleware({ order: 'pre', entrypoint: new URL('live/problem-page.ts', import.meta.url) });
        }
      },
      'astro:build:done'() {
        if (beside && process.connected) process.disconnect();
      },
    },
  };
}

/** Until the content is known to be well a build only reads; then the site of before is taken down, and it may write. */
function onceAllIsWell(outDir: URL, isWell: Promise<void> | undefined): Plugin {
  let isCleared = false;
  return {
    name: 'once-all-is-well',
    apply: 'build',
    buildEnd: {
      order: 'pre', // others begin to write in theirs
      async handler(error) {
        if (error) return;
        await isWell;
        if (isCleared) return;
        isCleared = true;
        // A site may be published by what git keeps in its folder.
        for (const name of existsSync(outDir) ? readdirSync(outDir) : [])
          if (name !== '.git') rmSync(new URL(name, outDir), { recursive: true, force: true, maxRetries: 3 });
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
    else if ('shown' in word) keepAhead(word);
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
