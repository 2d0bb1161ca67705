/**
 * npm start: the site for authoring. Checks the content, serves the pages, and shows every change as it is saved.
 * `npm start -- --port 4000 --host` choose another port, and let other devices of the house look on.
 */
import { enableCompileCache } from 'node:module';
import { fileURLToPath } from 'node:url';
import '../site/pages/no-telemetry.ts';
import { readArguments, tell, type Command } from './arguments.ts';
import { kitFolderFault } from './kit-folder.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** `--host` alone opens the site to the house; with an address it listens there. */
export const COMMAND = {
  name: 'npm start',
  about: 'Opens the site for writing: prints its address, and shows each change as you save.',
  choices: {
    port: { takes: '4000', about: 'another port than 4321' },
    host: { takes: '[ADDRESS]', alone: '0.0.0.0', about: 'lets other devices of the house look on' },
  },
} as const satisfies Command;

/**
 * Where to serve.
 *
 * @throws RangeError for a port that is none
 */
export function serverSettings(values: { port: string | undefined; host: string | undefined }) {
  const port = values.port === undefined ? undefined : Number(values.port);
  if (port !== undefined && !(Number.isInteger(port) && port > 0 && port < 65536)) {
    throw new RangeError(`--port ${values.port}: a port is a whole number from 1 to 65535.`);
  }
  return { ...(port && { port }), ...(values.host && { host: values.host }) };
}

async function start(values: Parameters<typeof serverSettings>[0]): Promise<void> {
  const fault = kitFolderFault(root);
  if (fault) throw new Error(fault);
  // What is fetched from here on is kept compiled.
  enableCompileCache();
  const { contentCheckOf } = await import('../site/live/content-check.ts');
  const check = contentCheckOf(root);
  const [server, { site, projects, files }] = await Promise.all([
    import('astro').then(({ dev }) => dev({ root, logLevel: 'warn', server: serverSettings(values) })),
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
  const asked = readArguments(COMMAND);
  if (asked.ok)
    await start(asked.values).catch((error: unknown) => {
      console.error(error instanceof Error ? error.message : error);
      process.exit(1);
    });
  else tell(asked);
}
