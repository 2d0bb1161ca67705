/** Requests to the form of `npm start`: all are answered, and only this machine's own page changes anything, in its own file. */
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { Readable } from 'node:stream';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { authorsForm } from '../../src/author/form/integration.ts';
import type { Chance } from './chance.ts';
import { count, family } from './family.ts';
import { mutated, ODD } from './texts.ts';

const OWN = { remote: '127.0.0.1', host: 'localhost:4321', origin: 'http://localhost:4321', type: 'application/json' };
const PATH = '/authoring/form/folio/file.json';
const PATHS = [
  ...[
    PATH,
    PATH,
    '/authoring/form/../form/folio/file.json',
    '/authoring/form/%66olio/file.json',
    '/authoring/form/folio/file.json?x=1',
  ],
  ...[
    '/authoring/form/../../package.json',
    '/authoring/form/..%2f..%2fsite/file.json',
    '/authoring/form/..\\..\\x/file.json',
  ],
  ...[
    '/authoring/form/%00/file.json',
    '/authoring/form/__proto__/file.json',
    '/authoring/form/link/file.json',
    '/authoring/form/out/file.json',
  ],
  ...[
    '//authoring/form/folio/file.json',
    '/authoring/form/',
    '/',
    '',
    '*',
    'http://other.example/authoring/form/folio/file.json',
    '//[',
    '/%',
  ],
  ...[
    '/authoring/form/FOLIO/file.json',
    '/authoring/form/folio%2ffile.json',
    '/authoring/form/nothing/file.json',
    '/authoring/form/con/file.json',
  ],
];
const HOSTS = [
  'localhost',
  '127.0.0.1:4321',
  '[::1]',
  'other.example',
  'localhost.other.example',
  '127.0.0.1.other.example',
  'localhost@other.example',
  '2130706433',
  '0x7f.1',
  '0.0.0.0',
  '',
  ' ',
  'a b',
  ...ODD,
];
const ORIGINS = [
  'null',
  'https://other.example',
  'http://localhost:80',
  'http://localhost:4321.other.example',
  'HTTP://LOCALHOST:4321',
  'file://',
  'http://localhost:4321/',
  '',
  'http://other.example#http://localhost:4321',
];
const REMOTES = [
  '::1',
  '::ffff:127.0.0.1',
  '192.168.0.7',
  '127.0.0.1.2',
  '::ffff:10.0.0.1',
  '',
  undefined,
  '0.0.0.0',
  '127.999.1.1',
];
const METHODS = ['GET', 'HEAD', 'POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH', 'TRACE', 'post', ''];

type Asked = {
  url: string;
  method: string;
  remote: string | undefined;
  headers: Record<string, string>;
  body: string;
  breaks: boolean;
};

const bodyFrom = (from: Chance): string =>
  JSON.stringify({
    place: from.often(0.7)
      ? ['measures', 'seam', 'mm']
      : from.of([[], ['__proto__'], ['title'], ['pieces', 0], ['measures'], ['steps', -1], [null], ['a'.repeat(500)]]),
    was: from.of(['6', '6', '6', '7', '"6"', undefined]),
    value: from.of([
      '7',
      '8',
      '-1',
      '',
      'x: y',
      '*a',
      '&a [*a]',
      '7\nsteps: []',
      '"',
      '7 # a',
      '9'.repeat(300),
      '!!js x',
      ...ODD,
    ]),
    ...(from.often(0.05) && { more: 1 }),
  });

/** A folder with a project that the form may write, one that a link leads out to, and a file beside. */
function house(): { root: string; own: string; others: string[] } {
  const root = fs.mkdtempSync(path.join(os.tmpdir(), 'form-'));
  fs.cpSync(fileURLToPath(new URL('../fixtures/sound/content', import.meta.url)), path.join(root, 'content'), {
    recursive: true,
  });
  const projects = path.join(root, 'content/projects');
  const own = path.join(projects, 'folio/project.yaml');
  fs.writeFileSync(own, fs.readFileSync(own, 'utf8').replace(/^title:.*$/mu, 'title: Folio'));
  fs.mkdirSync(path.join(root, 'elsewhere'));
  const out = path.join(root, 'elsewhere/project.yaml');
  fs.copyFileSync(own, out);
  fs.symlinkSync(path.join(root, 'elsewhere'), path.join(projects, 'out'));
  fs.mkdirSync(path.join(projects, 'link'));
  fs.symlinkSync(out, path.join(projects, 'link/project.yaml'));
  return { root, own, others: [out, path.join(root, 'content/site.yaml'), path.join(root, 'content/materials.yaml')] };
}

type Handler = (request: unknown, response: unknown, next: () => void) => void;
let form:
  Promise<{ handler: Handler; root: string; own: string; others: string[]; first: string; rest: string }> | undefined;

/** The form's middleware over a house of its own, which is taken away when the program ends. */
async function open() {
  const made = house();
  process.once('exit', () => fs.rmSync(made.root, { recursive: true, force: true }));
  const { hooks } = authorsForm();
  let handler: Handler | undefined;
  const run = (hook: unknown, given: object): unknown => (hook as (given: object) => unknown)(given);
  await run(hooks['astro:config:setup'], { command: 'build', config: { root: pathToFileURL(`${made.root}/`) } });
  const server = { config: { base: '/' }, middlewares: { use: (given: Handler) => (handler = given) } };
  await run(hooks['astro:server:setup'], { server });
  const text = (files: string[]) => files.map((file) => fs.readFileSync(file, 'utf8')).join('\n');
  return { handler: handler!, ...made, first: text([made.own]), rest: text(made.others) };
}

const came = new Map<string, number>();

export const server = family<Asked>(
  {
    name: 'server',
    makes: (from) => {
      const odd = <T>(own: T, others: readonly T[]): T => (from.often(0.75) ? own : from.of(others));
      const text = bodyFrom(from);
      const origin = odd<string | undefined>(OWN.origin, [...ORIGINS, undefined]);
      const type = odd<string | undefined>(OWN.type, [
        'text/plain',
        'application/x-www-form-urlencoded',
        'multipart/form-data',
        '',
        undefined,
      ]);
      return {
        url: odd(PATH, PATHS),
        method: odd('POST', METHODS),
        remote: odd<string | undefined>(OWN.remote, REMOTES),
        headers: {
          host: odd(OWN.host, HOSTS),
          ...(origin !== undefined && { origin }),
          ...(type !== undefined && { 'content-type': type }),
        },
        body: from.often(0.2)
          ? mutated(text, from, ['[]', '{}', '0', '"x"', '{"__proto__":{}}', 'x'.repeat(120_000)])
          : text,
        breaks: from.often(0.03),
      };
    },
    async broken(asked) {
      form ??= open();
      const { handler, own, others, first, rest } = await form;
      fs.writeFileSync(own, first);
      const { status, text } = await answerOf(handler, asked);
      count(came, String(status));
      const lines: string[] = [];
      const after = fs.readFileSync(own, 'utf8');
      const isOwnPage =
        asked.remote !== undefined &&
        /^(?:::1|(?:::ffff:)?127\.)/u.test(asked.remote) &&
        /^(?:localhost|127\.\d+\.\d+\.\d+|\[::1\]|2130706433|0x7f\.1)(?::\d+)?$/u.test(asked.headers['host']!) &&
        asked.headers['origin'] === `http://${asked.headers['host']}`;
      if (after !== first && (!isOwnPage || status !== 200 || !text.includes('"kind":"written"')))
        lines.push(`wrote, and answered ${status} ${text.slice(0, 80)}`);
      if (after !== first && changedLines(first, after) > 1) lines.push(`changed ${changedLines(first, after)} lines`);
      if (others.map((file) => fs.readFileSync(file, 'utf8')).join('\n') !== rest)
        lines.push('changed a file that is not its own');
      if (status === 200 && asked.headers['origin'] !== undefined && !isOwnPage)
        lines.push('answered a page elsewhere');
      if (![0, 200, 400, 403, 404, 405].includes(status) && !(status === 500 && asked.breaks))
        lines.push(`answered ${status} ${text.slice(0, 200)}`);
      if (fs.readdirSync(path.dirname(own)).length !== 1) lines.push('left something beside the file');
      return lines;
    },
  },
  came,
);

/** Lines that differ, of two texts; a line more or less counts, too. */
function changedLines(one: string, other: string): number {
  const [a, b] = [one.split('\n'), other.split('\n')];
  const same = (from: string[], to: string[]) => {
    const i = from.findIndex((line, n) => line !== to[n]);
    return i < 0 ? from.length : i;
  };
  const [above, below] = [same(a, b), same(a.toReversed(), b.toReversed())];
  return Math.max(a.length, b.length) - above - Math.min(below, Math.min(a.length, b.length) - above);
}

/** Status 0: the form leaves it to others. */
function answerOf(
  handler: Handler,
  { url, method, remote, headers, body, breaks }: Asked,
): Promise<{ status: number; text: string }> {
  return new Promise((resolve, reject) => {
    const stream = Readable.from(breaks ? broken(body) : [body], { objectMode: false });
    const request = Object.assign(stream, { url, method, socket: { remoteAddress: remote }, headers });
    let answers = 0;
    const response = {
      statusCode: 200,
      setHeader: () => response,
      end: (text: string) => {
        if (++answers > 1) reject(new Error('answered twice'));
        resolve({ status: response.statusCode, text });
      },
    };
    setTimeout(() => reject(new Error('no answer in 20 s')), 20_000).unref();
    handler(request, response, () => resolve({ status: 0, text: '' }));
  });
}

async function* broken(body: string): AsyncGenerator<string> {
  yield body.slice(0, 5);
  throw new Error('The line broke.');
}
