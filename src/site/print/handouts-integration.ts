import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import type { Fonts } from '../../core/index.ts';
import { withHandouts, withTeacher } from '../pages/build-options.ts';
import { printFonts } from './fonts.ts';

const FOLDER = 'handouts';
const fontFiles = { 'fonts/regular.ttf': 'regular', 'fonts/strong.ttf': 'strong' } as const;
const types: Readonly<Record<string, string>> = { pdf: 'application/pdf', svg: 'image/svg+xml', ttf: 'font/ttf' };

/** Of many documents, how far they are: a line for each five hundred. */
export const tellNowAndThen =
  (say: (line: string) => void) =>
  (done: number, all: number): void => {
    if (done > 0 && done < all && done % 500 === 0) say(`${done} of ${all} documents`);
  };

/** What makes documents; fetched when the first is wanted, since Astro reads this file before it does anything else. */
const press = async () => ({
  ...(await import('./handouts.ts')),
  ...(await import('../content/read-content.ts')),
  ...(await import('./write-handouts.ts')),
});

/**
 * The documents of every course, with the site: a build writes them below handouts/, the live preview makes each when
 * it is asked for. The fonts that a browser needs to make documents of its own lie beside them.
 */
export function handoutsInSite(): AstroIntegration {
  let root = '';
  const fonts = (): Promise<Fonts> => printFonts(path.join(root, '.cache/fonts'));
  return {
    name: 'handouts',
    hooks: {
      'astro:config:done'({ config }) {
        root = fileURLToPath(config.root);
      },
      'astro:server:setup'({ server }) {
        const start = `${server.config.base.replace(/\/$/, '')}/${FOLDER}/`;
        server.middlewares.use((request, response, next) => {
          const { pathname } = new URL(request.url ?? '/', 'http://localhost');
          if (!pathname.startsWith(start)) return next();
          find(pathname.slice(start.length))
            .then((bytes) => {
              if (!bytes) return next();
              response.setHeader('Content-Type', types[path.extname(pathname).slice(1)] ?? 'application/octet-stream');
              response.end(bytes);
            })
            .catch(next);
        });
      },
      async 'astro:build:done'({ dir, logger }) {
        const to = path.join(fileURLToPath(dir), FOLDER);
        await mkdir(path.join(to, 'fonts'), { recursive: true });
        for (const [file, face] of Object.entries(fontFiles))
          await writeFile(path.join(to, file), (await fonts())[face]);
        if (!withHandouts()) return;
        const start = performance.now();
        const { readContent, writeHandouts } = await press();
        const { files, findings } = await writeHandouts(readContent(root), to, await fonts(), {
          withoutTeacher: !withTeacher(),
          progress: tellNowAndThen((line) => logger.info(line)),
        });
        for (const finding of findings) logger.warn(finding);
        logger.info(`${files.length} documents in ${((performance.now() - start) / 1000).toFixed(1)} s`);
      },
    },
  };

  /** A file below handouts/, from the content as it is now. */
  async function find(file: string): Promise<Uint8Array | undefined> {
    if (file in fontFiles) return (await fonts())[fontFiles[file as keyof typeof fontFiles]];
    const { everything, made, plannedHandouts, readContent } = await press();
    const content = readContent(root);
    const course = file.split('/')[0] ?? '';
    const planned = plannedHandouts(content, course, everything).find((one) => one.file === file);
    return planned && (await made(planned, await fonts())).bytes;
  }
}
