/**
 * npm start: the site for authoring. Checks the content, serves the pages, and shows every change as it is saved.
 * `npm start -- --port 4000 --host` choose another port, and let other devices of the house look on.
 */
import { enableCompileCache } from 'node:module';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import '../site/pages/no-telemetry.ts';
import { kitFolderFault } from './kit-folder.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Where to serve, from the words after the command: `--host` alone opens the site to the house, with an address it
 * listens there.
 *
 * @throws RangeError for a port that is none
 */
export function serverSettings(args: string[]) {
  const { values } = parseArgs({
    args: args.map((arg, i) =>
      arg === '--host' && !(args[i + 1] && !args[i + 1]!.startsWith('-')) ? '--host=0.0.0.0' : arg,
    ),
    options: { port: { type: 'string' }, host: { type: 'string' } },
  });
  const port = values.port === undefined ? undefined : Number(values.port);
  if (port !== undefined && !(Number.isInteger(port) && port > 0 && port < 65536)) {
    throw new RangeError(`--port ${values.port}: a port is a whole number from 1 to 65535.`);
  }
  return { ...(port && { port }), ...(values.host && { host: values.host }) };
}

async function start(): Promise<void> {
  const fault = kitFolderFault(root);
  if (fault) throw new Error(fault);
  // What is fetched from here on is kept compiled.
  enableCompileCache();
  const { contentCheckOf } = await import('../site/live/content-check.ts');
  const check = contentCheckOf(root);
  const [server, { site, projects, files }] = await Promise.all([
    import('astro').then(({ dev }) => dev({ root, logLevel: 'warn', server: serverSettings(process.argv.slice(2)) })),
    check.overview,
  ]);
  const { local = [], network = [] } = server.resolvedUrls ?? {};
  const width = Math.max(...files.map(([file]) => file.length));

  console.log(`\n${site ?? 'Your site'} is open for writing at\n`);
  for (const address of [...local, ...network]) console.log(`  ${address}`);
  const [home] = local;
  if (home && projects.length) {
    console.log('\nOr change the numbers of a project as a form, on this machine only:\n');
    for (const id of projects) console.log(`  ${home}authoring/form/${id}/`);
  }
  console.log('\nEdit these files; the pages follow each time you save:\n');
  for (const [file, holds] of files) console.log(`  ${file.padEnd(width)}  ${holds}`);
  console.log('\nThe content is checked as you write. Ctrl+C stops it.\n');

  const { writeEditorFiles } = await import('../site/content/editor-files.ts');
  writeEditorFiles(root);
}

if (import.meta.main) {
  await start().catch((error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  });
}
