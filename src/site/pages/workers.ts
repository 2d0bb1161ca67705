/**
 * The programs that work beside a page, in workers: the writer of documents and the table on which pieces are laid.
 * They are put together by themselves, and share one copy of the core. Vite would bundle each with a copy of its own,
 * and address it from the top of the host: a copy of the site that lies below a path would not find it.
 */
import path from 'node:path';
import type { Plugin } from 'vite';

/** Where the programs start, from the project's root. */
const WORKERS = ['components/compute/table.ts', 'components/compute/press.ts'];

/** What programs are to do without: documents need no fonts that are packed in this way. */
export const withoutIn = (root: string) => ({
  'brotli/decompress.js': path.join(root, 'components/compute/no-brotli.ts'),
});

/** A file of the programs, and the worker that starts with it. */
export type Program = { fileName: string; code: string; worker: string | undefined };

/** @returns the programs, each in a file of its own, and what they share in others */
export async function bundleWorkers(root: string): Promise<Program[]> {
  const { rolldown } = await import('rolldown');
  const bundle = await rolldown({
    cwd: root,
    input: WORKERS,
    platform: 'browser',
    resolve: { alias: withoutIn(root) },
    transform: { target: ['chrome111', 'firefox114', 'safari16.4'] }, // what Vite makes of pages
    logLevel: 'warn',
  });
  const { output } = await bundle.generate({
    format: 'es',
    minify: true,
    entryFileNames: '[name]-[hash].js',
    chunkFileNames: '[name]-[hash].js',
  });
  await bundle.close();
  return output.map((file) => {
    if (file.type !== 'chunk') throw new Error(`${file.fileName} is no program.`);
    const worker = file.facadeModuleId && file.isEntry ? from(root, file.facadeModuleId) : undefined;
    return { fileName: file.fileName, code: file.code, worker };
  });
}

/** Where a file lies from the root, written as on the web. */
const from = (root: string, file: string): string => path.relative(root, file).split(path.sep).join('/');

/**
 * Puts the programs among the files of the site, and their addresses, from the file that starts one, into the page.
 *
 * @param fromBeside the programs where they were put together meanwhile; the build does it itself where they were not
 */
export function workersInFiles(root: string, fromBeside: () => Promise<Program[] | undefined>): Plugin {
  let folder: string;
  let programs: Promise<Program[]> | undefined;
  return {
    name: 'workers-in-files',
    apply: 'build',
    enforce: 'pre',
    applyToEnvironment: ({ config }) => config.consumer === 'client',
    configResolved({ environments }) {
      folder = environments.client!.build.assetsDir;
    },
    transform: {
      filter: { code: 'new Worker(' },
      async handler(code, id) {
        const [start, name] = /new URL\('(\.{1,2}\/[\w/.-]+\.ts)', import\.meta\.url\)/.exec(code) ?? [];
        if (start === undefined || !code.includes(`new Worker(${start}`)) return undefined;
        const putAmongFiles = async () => {
          const files = (await fromBeside()) ?? (await bundleWorkers(root));
          for (const { fileName, code: source } of files)
            this.emitFile({ type: 'asset', fileName: `${folder}/${fileName}`, source });
          return files;
        };
        programs ??= putAmongFiles();
        const worker = from(root, path.resolve(path.dirname(id), name!));
        const program = (await programs).find((file) => file.worker === worker);
        if (!program) throw new Error(`${worker} is not among the workers.`);
        // It lies beside the file that starts it.
        return { code: code.replace(start, `new URL(/* @vite-ignore */ './${program.fileName}', import.meta.url)`) };
      },
    },
  };
}
