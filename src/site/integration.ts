import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { onlyTexts } from './check/programs-in.ts';
import { report } from './check/report.ts';
import { isError } from './content/diagnostic.ts';
import { writeWordExamples } from './pages/word-examples.ts';

/**
 * Keeps mistakes in the content out of a built site, and shows them in the page while the site is being edited. Stands
 * before the MDX integration, so that a lesson with a mistake never reaches it. A build with mistakes ends here, before
 * Astro writes anything: the site of before stays.
 */
export function contentCheck(): AstroIntegration {
  return {
    name: 'content-check',
    hooks: {
      async 'astro:config:setup'({ command, config, addMiddleware, injectScript, updateConfig }) {
        const root = fileURLToPath(config.root);
        writeWordExamples(root);
        if (command === 'build') {
          // The preview does without: its own thread checks.
          const { problemsOfBuild } = await import('./check/problems-of-build.ts');
          const mistakes = problemsOfBuild(root).filter(isError);
          if (mistakes.length > 0) throw new ContentMistakes(report(mistakes));
        }
        updateConfig({ vite: { plugins: [onlyTexts(root)] } });
        if (command === 'dev') {
          const { coreByNode } = await import('./live/core-by-node.ts');
          const { livePreview } = await import('./live/live-preview.ts');
          updateConfig({ vite: { plugins: [coreByNode(root), livePreview(root)] } });
          injectScript('page', `import ${JSON.stringify(fileURLToPath(new URL('live/panel.ts', import.meta.url)))};`);
          addMiddleware({ order: 'pre', entrypoint: new URL('live/problem-page.ts', import.meta.url) });
        }
      },
    },
  };
}

/** A stack says nothing to an author, so the error has none. */
class ContentMistakes extends Error {
  override name = 'ContentMistakes';
  constructor(list: string) {
    super(`The site is not built. Mend these mistakes first:\n\n${list}`);
    this.stack = '';
  }
}
