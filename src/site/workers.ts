/**
 * The programs that work beside a page, in workers: the writer of documents and the table on which pieces are laid.
 * Each goes into a file of its own. Vite would bundle them too, but address them from the top of the host: a copy of
 * the site that lies below a path would not find them.
 */
import path from 'node:path';
import type { Plugin } from 'vite';

/** Where the programs lie, from the project's root. */
export const WORKERS = ['components/cutting/table.ts', 'components/widgets/own-sheets/press.ts'] as const;

/** What programs are to do without: documents need no fonts that are packed in this way. */
export const withoutIn = (root: string) => ({
  'brotli/decompress.js': path.join(root, 'components/widgets/own-sheets/no-brotli.ts'),
});

/** What a worker's file is called while its name is not known yet. */
const STANDS_FOR = 'worker-in-file:';
const FILE = new RegExp(`${STANDS_FOR}([\\w-]+)`, 'gu');

/** A worker bundled by the command that has started a build; nothing where it could not be. */
export type Bundled = { worker: string; code: string | undefined };

/**
 * @param file one of `WORKERS`
 * @returns the program, in one piece
 */
export async function bundleWorker(root: string, file: string): Promise<string> {
  const { build } = await import('vite');
  const built = await build({
    root,
    configFile: false,
    publicDir: false,
    logLevel: 'error',
    resolve: { alias: withoutIn(root) },
    build: {
      write: false,
      modulePreload: false,
      rolldownOptions: { input: path.join(root, file), output: { format: 'es', codeSplitting: false } },
    },
  });
  if (!('output' in built)) throw new Error(`${file} makes no single program.`);
  return built.output[0].code;
}

/**
 * Puts each worker that a page starts into a file, and its address, from the file that starts it, into the page.
 *
 * @param fromBeside a worker that was bundled meanwhile; the build does it itself where there is none
 */
export function workersInFiles(root: string, fromBeside: (file: string) => Promise<string | undefined>): Plugin {
  return {
    name: 'workers-in-files',
    apply: 'build',
    enforce: 'pre',
    applyToEnvironment: ({ config }) => config.consumer === 'client',
    async transform(code, id) {
      const [whole, name] = /new URL\('(\.\/[\w-]+\.ts)', import\.meta\.url\)/.exec(code) ?? [];
      if (whole === undefined || !code.includes(`new Worker(${whole}`)) return undefined;
      const file = path
        .relative(root, path.resolve(path.dirname(id), name!))
        .split(path.sep)
        .join('/');
      const source = (await fromBeside(file)) ?? (await bundleWorker(root, file));
      const reference = this.emitFile({ type: 'asset', name: `${path.basename(file, '.ts')}.js`, source });
      return { code: code.replace(whole, `new URL(/* @vite-ignore */ '${STANDS_FOR}${reference}', import.meta.url)`) };
    },
    renderChunk(code) {
      if (!code.includes(STANDS_FOR)) return undefined;
      // It lies beside the file that starts it.
      return { code: code.replace(FILE, (_, reference: string) => path.basename(this.getFileName(reference))) };
    },
  };
}
