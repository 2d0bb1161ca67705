/** What lies below a folder of the built site, handed out by the live preview as it is asked for. */
import path from 'node:path';
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { ViteDevServer } from 'vite';

/** Answers a request for one file, or says that there is none. */
type Answer = (file: string, request: IncomingMessage, response: ServerResponse) => Promise<boolean>;

/**
 * Answers what is asked below a folder. What is no address, and what there is no file for, goes on to the next.
 *
 * @param types what each kind of file is called, by its ending
 */
export function serveBelow(
  server: ViteDevServer,
  folder: string,
  types: Readonly<Record<string, string>>,
  answer: Answer,
): void {
  const start = `${server.config.base.replace(/\/$/, '')}/${folder}/`;
  server.middlewares.use((request, response, next) => {
    const pathname = URL.parse(request.url ?? '/', 'http://localhost')?.pathname;
    if (!pathname?.startsWith(start)) return next();
    const file = pathname.slice(start.length).replace(/\/$/, '/index.html');
    const type = types[path.extname(file).slice(1).toLowerCase()] ?? 'application/octet-stream';
    const goOn = (error?: unknown): void => {
      response.removeHeader('Content-Type');
      next(error);
    };
    response.setHeader('Content-Type', type);
    answer(file, request, response).then((isThere) => (isThere ? undefined : goOn()), goOn);
  });
}
