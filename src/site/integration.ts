import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { findContentProblems } from './find-content-problems.ts';
import { livePreview } from './live/live-preview.ts';
import { isError } from './problem.ts';
import { report } from './report.ts';
import { writeWordExamples } from './word-examples.ts';

/**
 * Keeps mistakes in the content out of a built site, and shows them in the page while the site is being edited. Stands
 * before the MDX integration, so that a lesson with a mistake never reaches it.
 */
export function contentCheck(): AstroIntegration {
  return {
    name: 'content-check',
    hooks: {
      'astro:config:setup'({ command, config, addMiddleware, injectScript, updateConfig }) {
        const root = fileURLToPath(config.root);
        writeWordExamples(root);
        // The command that builds has checked already, and says what it found in one place.
        if (command === 'build' && process.env.CONTENT_CHECKED !== 'yes') {
          const mistakes = findContentProblems(root).filter(isError);
          if (mistakes.length) throw new ContentMistakes(report(mistakes));
        }
        if (command === 'dev') {
          updateConfig({ vite: { plugins: [livePreview(root)] } });
          injectScript('page', `import ${JSON.stringify(fileURLToPath(new URL('live/panel.ts', import.meta.url)))};`);
          addMiddleware({ order: 'pre', entrypoint: new URL('live/problem-page.ts', import.meta.url) });
        }
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
