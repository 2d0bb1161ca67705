/** Serves the built site as a static host would, on a free port of this machine. */
import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.json': 'application/json',
};

export async function servePages(
  folder = fileURLToPath(new URL('../../dist', import.meta.url)),
): Promise<{ origin: string; close: () => void }> {
  if (!existsSync(folder)) throw new Error('There is no built site yet. Run npm run build first.');
  const server = createServer((request, response) => {
    const asked = decodeURIComponent(new URL(request.url ?? '/', 'http://here').pathname);
    let file = path.join(folder, path.normalize(asked));
    if (existsSync(file) && statSync(file).isDirectory()) file = path.join(file, 'index.html');
    const found = existsSync(file);
    response.writeHead(found ? 200 : 404, { 'content-type': TYPES[path.extname(file)] ?? 'application/octet-stream' });
    if (found) createReadStream(file).pipe(response);
    else response.end();
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    close: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}
