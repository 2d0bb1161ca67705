import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import type { Fonts } from '../../core/index.ts';
import { withHandouts, withTeacher } from '../pages/build-options.ts';
import { serveBelow } from './below.ts';
import { printFonts } from './fonts.ts';
import type { HandoutRequest } from './write-handouts.ts';

const FOLDER = 'handouts';
const fontFiles = { 'fonts/regular.ttf': 'regular', 'fonts/strong.ttf': 'strong' } as const;
const types: Readonly<Record<string, string>> = { pdf: 'application/pdf', svg: 'image/svg+xml', ttf: 'font/ttf' };

/** Of many documents, how far they are: a line for each five hundred that are made. */
export const tellNowAndThen = (say: (line: string) => void): NonNullable<HandoutRequest['progress']> => {
  let next = 500;
  return ({ done, all, files }) => {
    if (done === all || files < next) return;
    next = files + 500;
    say(`${files} documents, ${done} of ${all} courses done`);
  };
};

/** What makes documents; fetched when the first is wanted, since Astro reads this file before it does anything else. */
const press = async () => ({
  ...(await import('./handouts.ts')),
  ...(await import('../content/read-content.ts')),
  ...(await import('./kept-handouts.ts')),
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
        serveBelow(server, FOLDER, types, async (file, _, response) => {
          const bytes = await find(file);
          if (bytes) response.end(bytes);
          return bytes !== undefined;
        });
      },
      async 'astro:build:done'({ dir, logger }) {
        const to = path.join(fileURLToPath(dir), FOLDER);
        await mkdir(path.join(to, 'fonts'), { recursive: true });
        for (const [file, face] of Object.entries(fontFiles))
          await writeFile(path.join(to, file), (await fonts())[face]);
        if (!withHandouts()) return;
        const start = performance.now();
        const { digestOfKit, KEPT_HANDOUTS, KeptHandouts, writeHandouts } = await press();
        const kept = new KeptHandouts(path.join(root, KEPT_HANDOUTS), await digestOfKit(root));
        const { files, findings, takenOver } = await writeHandouts(root, to, await fonts(), {
          withoutTeacher: !withTeacher(),
          kept,
          progress: tellNowAndThen((line) => logger.info(line)),
        });
        for (const finding of findings) logger.warn(finding);
        const made = `${files.length} documents in ${((performance.now() - start) / 1000).toFixed(1)} s`;
        logger.info(takenOver > 0 ? `${made}, ${takenOver} of them as the build before made them` : made);
      },
    },
  };

  /** A file below handouts/, from the content as it is now. */
  async function find(file: string): Promise<Uint8Array | undefined> {
    if (file in fontFiles) return (await fonts())[fontFiles[file as keyof typeof fontFiles]];
    const { everything, made, plannedHandouts, readCourse } = await press();
    const course = file.split('/')[0] ?? '';
    const planned = plannedHandouts(readCourse(root, course), course, everything).find((one) => one.file === file);
    return planned && (await made(planned, await fonts())).bytes;
  }
}
