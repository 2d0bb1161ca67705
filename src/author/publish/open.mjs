// Opens the site in this folder: node open.mjs. Another folder is opened by its name: node open.mjs dist
// It serves the folder to this computer alone, for as long as this window is open.
import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { spawn } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const folder = path.resolve(process.argv[2] ?? path.dirname(fileURLToPath(import.meta.url)));
const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.pdf': 'application/pdf',
  '.txt': 'text/plain; charset=utf-8',
  '.xml': 'application/xml',
  '.vtt': 'text/vtt; charset=utf-8',
  '.webm': 'video/webm',
  '.mp4': 'video/mp4',
};

const server = createServer((request, response) => {
  let file;
  try {
    file = path.join(folder, decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname));
  } catch {
    file = folder; // no address at all: the start will do
  }
  if (existsSync(file) && statSync(file).isDirectory()) file = path.join(file, 'index.html');
  const isThere = file.startsWith(folder + path.sep) && existsSync(file);
  const shown = isThere ? file : path.join(folder, '404.html');
  const size = existsSync(shown) ? statSync(shown).size : 0;
  const part = isThere ? partOf(request.headers.range, size) : undefined;
  response.writeHead(part ? 206 : isThere ? 200 : 404, {
    'content-type': types[path.extname(shown)] ?? 'application/octet-stream',
    'content-length': part ? part.end - part.start + 1 : size,
    'accept-ranges': 'bytes',
    ...(part && { 'content-range': `bytes ${part.start}-${part.end}/${size}` }),
  });
  createReadStream(shown, part)
    .on('error', () => response.end())
    .pipe(response);
});

// The part of a file that is asked for; a recording is sought by parts. What cannot be read is the whole file.
function partOf(range, size) {
  const [, from, to] = /^bytes=(\d+)-(\d*)$/.exec(range ?? '') ?? [];
  const [start, end] = [Number(from), Math.min(Number(to || Infinity), size - 1)];
  return start <= end ? { start, end } : undefined;
}

server.listen(Number(process.env.PORT ?? 0), '127.0.0.1', () => {
  const address = `http://127.0.0.1:${server.address().port}/`;
  console.log(`The site is open at ${address}\nClose this window, or press Ctrl+C, to end it.`);
  if (process.env.PORT) return;
  const [command, ...words] =
    process.platform === 'win32'
      ? ['cmd', '/c', 'start', '', address]
      : [process.platform === 'darwin' ? 'open' : 'xdg-open', address];
  spawn(command, words, { stdio: 'ignore', detached: true }).on('error', () => {});
});
