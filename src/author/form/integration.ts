import type { IncomingMessage, ServerResponse } from 'node:http';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { z } from 'zod';
import type { ProjectFiles } from './project-files.ts';
import type { SaidInRecordings } from './said-in.ts';
import { refusal } from './same-machine.ts';

const FORM = '/authoring/form/';
/** More than any one value is long. */
const LONGEST = 100_000;

const Change = z.strictObject({
  place: z.array(z.union([z.string(), z.int().nonnegative()])).min(1),
  was: z.string().optional(),
  value: z.string(),
});

/** A word of a line, and no longer. */
const Word = z
  .string()
  .trim()
  .min(1)
  .max(200)
  .regex(/^[^\r\n]*$/);
const Mended = z.strictObject({ course: z.string(), heard: Word, meant: Word });

/**
 * The author's form: a project as a form beside what follows from it. Only while the site is being written: a build
 * does not know of it.
 */
export function authorsForm(): AstroIntegration {
  let root = '';
  return {
    name: 'authors-form',
    hooks: {
      'astro:config:setup'({ command, config, injectRoute }) {
        root = fileURLToPath(config.root);
        if (command !== 'dev') return;
        injectRoute({
          pattern: `${FORM}[project]`,
          entrypoint: new URL('Page.astro', import.meta.url),
          prerender: true,
        });
      },
      'astro:server:setup'({ server }) {
        const start = `${server.config.base.replace(/\/$/, '')}${FORM}`;
        /** They check what they write, and most who write a course never open the form: fetched with the first request. */
        let shelf: ProjectFiles | undefined;
        let recordings: SaidInRecordings | undefined;
        const files = async () => (shelf ??= new (await import('./project-files.ts')).ProjectFiles(root));
        const said = async () => (recordings ??= new (await import('./said-in.ts')).SaidInRecordings(root));
        const answer = async (request: IncomingMessage, response: ServerResponse, next: () => void): Promise<void> => {
          const pathname = URL.parse(request.url ?? '/', 'http://localhost')?.pathname;
          if (!pathname?.startsWith(start)) return next();
          const why = refusal({
            remote: request.socket.remoteAddress,
            method: request.method,
            headers: request.headers,
          });
          if (why) return send(response, 403, { message: why });
          const [, id, kind] = /^([^/]+)\/(file|said)\.json$/.exec(pathname.slice(start.length)) ?? [];
          if (id === undefined) return next();
          if (kind === 'said' && request.method === 'GET') return send(response, 200, (await said()).read(id));
          if (kind === 'said' && request.method === 'POST') {
            const word = Mended.safeParse(await readJson(request));
            return word.success
              ? send(response, 200, (await said()).accept(id, word.data))
              : send(response, 400, { message: 'This is no word to put right.' });
          }
          if (request.method === 'GET') return send(response, ...found((await files()).read(id)));
          if (request.method !== 'POST') return send(response, 405, { message: 'The form reads and writes only.' });
          const change = Change.safeParse(await readJson(request));
          return change.success
            ? send(response, ...found((await files()).write(id, change.data)))
            : send(response, 400, { message: 'This is not a change.' });
        };
        server.middlewares.use((request, response, next) => {
          answer(request, response, next).catch((error: unknown) => {
            const message = error instanceof Error ? error.message : String(error);
            send(response, 500, { message: `The form could not do this: ${message}` });
          });
        });
      },
    },
  };
}

const found = (answer: object | undefined): [status: number, answer: object] =>
  answer ? [200, answer] : [404, { message: 'There is no such project, or it cannot be read yet.' }];

function send(response: ServerResponse, status: number, answer: object): void {
  response.statusCode = status;
  response.setHeader('Content-Type', 'application/json');
  response.setHeader('Cache-Control', 'no-store');
  response.end(JSON.stringify(answer));
}

async function readJson(request: IncomingMessage): Promise<unknown> {
  let text = '';
  for await (const part of request.setEncoding('utf8')) {
    text += String(part);
    if (text.length > LONGEST) return undefined;
  }
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
