import { createReadStream, statSync } from 'node:fs';
import type { ServerResponse } from 'node:http';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { withTeacher } from '../pages/build-options.ts';
import { FOLDER } from '../pages/recorded.ts';
import { serveBelow } from './below.ts';

const types: Readonly<Record<string, string>> = {
  vtt: 'text/vtt; charset=utf-8',
  txt: 'text/plain; charset=utf-8',
  html: 'text/html; charset=utf-8',
  webm: 'video/webm',
  mp4: 'video/mp4',
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  avif: 'image/avif',
};

/** What writes and reads; fetched when it is wanted, since Astro reads this file before it does anything else. */
const press = async () => ({
  ...(await import('../content/read-content.ts')),
  ...(await import('./recordings.ts')),
  ...(await import('./write-recordings.ts')),
});

/**
 * The recordings of every course, with the site: a build copies them below recordings/ and writes their captions beside
 * them, the live preview hands out each when it is asked for. What the author may put right is left out, unless
 * TEACHER_PAGES=yes asks for it.
 */
export function recordingsInSite(): AstroIntegration {
  let root = '';
  return {
    name: 'recordings',
    hooks: {
      'astro:config:done'({ config }) {
        root = fileURLToPath(config.root);
      },
      'astro:server:setup'({ server }) {
        serveBelow(server, FOLDER, types, async (file, request, response) => {
          const found = await find(file);
          if (!found) return false;
          if ('text' in found) response.end(found.text);
          else sendPart(found.file, request.headers.range, response);
          return true;
        });
      },
      async 'astro:build:done'({ dir, logger }) {
        const { readContent, writeRecordings } = await press();
        const to = path.join(fileURLToPath(dir), FOLDER);
        const files = await writeRecordings(readContent(root), root, to, { corrections: withTeacher() });
        if (files.length > 0) logger.info(`${files.length} files of recordings`);
      },
    },
  };

  /** A file below recordings/, from the content as it is now. */
  async function find(file: string): Promise<{ text: string } | { file: string } | undefined> {
    const { readContent, recordingTexts } = await press();
    const content = readContent(root);
    const [course, name, last] = file.split('/');
    const one = content.recordings.find((entry) => entry.course === course && entry.name === name);
    const copied = [one?.media, one?.poster].find((path) => path?.split('/').at(-1) === last);
    if (copied !== undefined) return { file: path.join(root, copied) };
    return one && recordingTexts(content, { course }).find((written) => written.file === file);
  }
}

/** A player asks for a part of a file, so that one can jump in it. */
function sendPart(file: string, range: string | undefined, response: ServerResponse): void {
  const { size } = statSync(file);
  const [, first, last] = /^bytes=(\d*)-(\d*)$/.exec(range ?? '') ?? [];
  const isSuffix = first === '' && last !== '';
  const start = isSuffix ? Math.max(0, size - Number(last)) : Number(first || 0);
  const end = isSuffix || !last ? size - 1 : Math.min(Number(last), size - 1);
  response.setHeader('Accept-Ranges', 'bytes');
  if (range !== undefined && (start > end || first === undefined)) {
    response.writeHead(416, { 'Content-Range': `bytes */${size}` }).end();
    return;
  }
  response.setHeader('Content-Length', Math.max(0, end - start + 1));
  if (range !== undefined) response.writeHead(206, { 'Content-Range': `bytes ${start}-${end}/${size}` });
  if (size === 0) response.end();
  else createReadStream(file, { start, end }).pipe(response);
}
