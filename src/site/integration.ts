import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { isError } from './problem.ts';
import { report } from './report.ts';
import { writeWordExamples } from './word-examples.ts';

/** Set by a command that checks the content beside the build it has started, and sends word when all is well. */
export const CHECKED_BESIDE = 'CONTENT_IS_CHECKED_BESIDE';

/**
 * Keeps mistakes in the content out of a built site, and shows them in the page while the site is being edited. Stands
 * before the MDX integration, so that a lesson with a mistake never reaches it.
 */
export function contentCheck(): AstroIntegration {
  const word = process.env[CHECKED_BESIDE] ? once(process, 'message') : undefined;
  return {
    name: 'content-check',
    hooks: {
      async 'astro:config:setup'({ command, config, addMiddleware, injectScript, updateConfig }) {
        const root = fileURLToPath(config.root);
        writeWordExamples(root);
        if (command === 'build' && !word) {
          const { findContentProblems } = await import('./find-content-problems.ts');
          const mistakes = findContentProblems(root).filter(isError);
          if (mistakes.length) throw new ContentMistakes(report(mistakes));
        }
        if (command === 'dev') {
          const { livePreview } = await import('./live/live-preview.ts');
          updateConfig({ vite: { plugins: [livePreview(root)] } });
          injectScript('page', `import ${JSON.stringify(fileURLToPath(new URL('live/panel.ts', import.meta.url)))};`);
          addMiddleware({ order: 'pre', entrypoint: new URL('live/problem-page.ts', import.meta.url) });
        }
      },
      // From here on the site of before is taken down, and lessons are read by what cannot tell their mistakes.
      async 'astro:build:start'() {
        if (!word) return;
        await word;
        process.disconnect?.();
      },
    },
  };
}

/** Where in the program it was thrown helps nobody, so it carries no stack. */
class ContentMistakes extends Error {
  override name = 'ContentMistakes';
  constructor(list: string) {
    super(`The site is not built. Mend these mistakes first:\n\n${list}`);
    this.stack = '';
  }
}
