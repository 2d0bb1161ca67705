import { createReadStream, existsSync, statSync } from 'node:fs';
import { copyFile, mkdir } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { serveBelow } from './below.ts';

/** Fetched when it is wanted, since Astro reads this file before it does anything else. */
const reader = async () => ({
  ...(await import('../content/read-content.ts')),
  ...(await import('../content/files-beside.ts')),
});

/**
 * The files that lessons let their readers take along, with the site: a build copies those that a lesson names, and no
 * others; the live preview hands out each when it is asked for.
 */
export function filesInSite(): AstroIntegration {
  let root = '';
  return {
    name: 'files',
    hooks: {
      'astro:config:done'({ config }) {
        root = fileURLToPath(config.root);
      },
      async 'astro:server:setup'({ server }) {
        const { FOLDER } = await import('../content/files-beside.ts');
        serveBelow(server, FOLDER, {}, async (asked, _, response) => {
          const { filesTaken, readCourse } = await reader();
          const [course = '', name = '', ...more] = decodeURIComponent(asked).split('/');
          const file = path.join(root, 'content/courses', course, name);
          const isTaken = more.length === 0 && filesTaken(readCourse(root, course).lessons).includes(name);
          if (!isTaken || !existsSync(file)) return false;
          response.setHeader('Content-Length', statSync(file).size);
          createReadStream(file).pipe(response);
          return true;
        });
      },
      async 'astro:build:done'({ dir, logger }) {
        const { FOLDER, filesTaken, readContent } = await reader();
        let count = 0;
        for (const [course, lessons] of Map.groupBy(readContent(root).lessons, (lesson) => lesson.course)) {
          const to = path.join(fileURLToPath(dir), FOLDER, course);
          for (const name of filesTaken(lessons)) {
            await mkdir(to, { recursive: true });
            await copyFile(path.join(root, 'content/courses', course, name), path.join(to, name));
            count += 1;
          }
        }
        if (count > 0) logger.info(`${count} files to take along`);
      },
    },
  };
}
