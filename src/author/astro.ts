/**
 * Astro's commands for this project, without its calls home: `node src/author/astro.ts build | preview | sync`.
 * `build` checks the content first and lists what it finds; with mistakes it ends before Astro begins.
 * `--outDir` and `--silent` are for a build, `--host` and `--port` for a preview.
 */
import { enableCompileCache } from 'node:module';
import { fileURLToPath } from 'node:url';
import '../site/pages/no-telemetry.ts';
import { readArguments, tell, type Command } from './arguments.ts';
import { kitFolderFault } from './kit-folder.ts';

enableCompileCache();
const root = fileURLToPath(new URL('../..', import.meta.url));
const COMMANDS = {
  build: {
    name: 'npm run build',
    about: 'Checks the content and writes the site to dist. With a mistake, the site that was built before stays.',
    choices: {
      outDir: { takes: 'FOLDER', about: 'another folder than dist' },
      silent: { about: 'tells of mistakes alone' },
    },
  },
  preview: {
    name: 'npm run preview',
    about: 'Shows the site that was built.',
    choices: {
      port: { takes: '4000', about: 'another port than 4321' },
      host: { takes: '[ADDRESS]', alone: '0.0.0.0', about: 'lets other devices of the house look on' },
    },
  },
  sync: { name: 'node src/author/astro.ts sync', about: 'Writes the types of the pages.', choices: {} },
} as const satisfies Record<string, Command>;

const [which, ...words] = process.argv.slice(2);
switch (which) {
  case 'build': {
    const asked = readArguments(COMMANDS.build, words);
    if (asked.ok) await build(asked.values);
    else tell(asked);
    break;
  }
  case 'preview': {
    const asked = readArguments(COMMANDS.preview, words);
    if (asked.ok) {
      const { preview } = await import('astro');
      const { host, port } = asked.values;
      await preview({ root, server: { ...(host && { host }), ...(port && { port: Number(port) }) } });
    } else tell(asked);
    break;
  }
  case 'sync': {
    const { sync } = await import('astro');
    await sync({ root });
    break;
  }
  default:
    console.error('Say which: build, preview or sync.');
    process.exitCode = 1;
}

async function build({ outDir, silent }: { outDir: string | undefined; silent: boolean }): Promise<void> {
  const fault = kitFolderFault(root);
  if (fault) {
    console.log(fault);
    process.exitCode = 1;
    return;
  }
  const { problemsOfBuild } = await import('../site/check/problems-of-build.ts');
  const { isError } = await import('../site/content/diagnostic.ts');
  const { report } = await import('../site/check/report.ts');
  const problems = problemsOfBuild(root);
  if (problems.length > 0) console.log(`${report(problems, process.stdout.hasColors?.() ?? false)}\n`);
  if (problems.some(isError)) {
    console.log('The site is not built. Mend the mistakes above first.');
    process.exitCode = 1;
    return;
  }
  const astro = await import('astro');
  await astro.build({ root, ...(outDir && { outDir }), ...(silent && { logLevel: 'silent' }) });
}
