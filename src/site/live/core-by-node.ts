import { existsSync, realpathSync } from 'node:fs';
import { builtinModules } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Plugin } from 'vite';

/** The addresses that the plugin gives to modules of the core. */
const CORE = /^file:.*\/src\/core\//;

/**
 * While the site is being edited, Node itself loads the core for the pages: it is plain TypeScript, and the thread that
 * makes the pages has most of it already, since lessons are compiled with it. Vite would read, rewrite and evaluate each
 * of its files once more. Browsers get the core from Vite, as ever.
 *
 * @param root the folder that holds src/
 */
export function coreByNode(root: string): Plugin {
  const core = path.join(realpathSync(root), 'src/core') + path.sep;
  return {
    name: 'core-by-node',
    enforce: 'pre',
    apply: 'serve',
    applyToEnvironment: ({ config }) => config.consumer === 'server',
    // What is built in is left to Node.
    configEnvironment: (_, { consumer }) =>
      consumer === 'client' ? undefined : { resolve: { builtins: [...builtinModules, /^node:/, CORE] } },
    resolveId: {
      filter: { id: /^\.{1,2}\/.*\.ts$/ },
      handler(id, importer) {
        if (importer === undefined) return undefined;
        const file = path.resolve(path.dirname(importer), id);
        return file.startsWith(core) && existsSync(file) ? { id: pathToFileURL(file).href, external: true } : undefined;
      },
    },
  };
}
