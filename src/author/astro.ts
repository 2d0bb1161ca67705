/**
 * Astro's commands for this project, without its calls home: `node src/author/astro.ts build | preview | sync`.
 * `build` checks the content first and lists what it finds; with mistakes it ends before Astro begins.
 * `--outDir` and `--silent` are for a build, `--host` and `--port` for a preview.
 */
import { enableCompileCache } from 'node:module';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import '../site/pages/no-telemetry.ts';
import { kitFolderFault } from './kit-folder.ts';

enableCompileCache();
const root = fileURLToPath(new URL('../..', import.meta.url));
const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: {
    outDir: { type: 'string' },
    silent: { type: 'boolean', default: false },
    host: { type: 'string' },
    port: { type: 'string' },
  },
});

switch (positionals[0]) {
  case 'build':
    await build();
    break;
  case 'preview': {
    const { preview } = await import('astro');
    const { host, port } = values;
    await preview({ root, server: { ...(host && { host }), ...(port && { port: Number(port) }) } });
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

async function build(): Promise<void> {
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
  const { outDir, silent } = values;
  await astro.build({ root, ...(outDir && { outDir }), ...(silent && { logLevel: 'silent' }) });
}
