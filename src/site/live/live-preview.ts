import path from 'node:path';
import { setTimeout as after } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import type { Plugin, ViteDevServer, WebSocketClient } from 'vite';
import { report } from '../check/report.ts';
import { counted, isError } from '../content/diagnostic.ts';
import { contentCheckOf } from './content-check.ts';
import type { Checked } from './content-check.ts';
import type { LiveProblems } from './messages.ts';

/** What pages know of the content comes from here; they begin anew where it does. */
const PAGES = toModulePath(fileURLToPath(new URL('../pages/index.ts', import.meta.url)));

/** Tells a page of the preview whether the content has a mistake; undefined while that is being checked. */
export const MISTAKES_MODULE = 'virtual:content-mistakes';

/** What no page is made from while one writes: the built site, what is kept for the next start, the kit's own tests. */
const UNWATCHED = ['dist', '.cache', 'tests'];

/** How long a page that fails waits for the check, in ms: that of a small school is done by then. */
const PATIENCE = 2000;

/**
 * While the site is being edited: checks the content after each change, tells the open pages and the terminal, and lets
 * lessons with mistakes show what can be shown.
 */
export function livePreview(root: string): Plugin {
  const folder = path.join(root, 'content') + path.sep;
  const unwatched = UNWATCHED.map((name) => toModulePath(path.join(root, name)) + '/');
  const check = contentCheckOf(root);
  let now: LiveProblems = { problems: [], kept: [] };
  let server: ViteDevServer | undefined;

  /** What was said of mistakes holds no longer: the next page that asks is told anew. */
  const forgetMistakes = () => {
    for (const { moduleGraph } of Object.values(server?.environments ?? {})) {
      const module = moduleGraph.getModuleById(`\0${MISTAKES_MODULE}`);
      if (module) moduleGraph.invalidateModule(module);
    }
  };

  const onChecked = (server: ViteDevServer, { changed, problems, kept }: Checked) => {
    const had = now.problems.length;
    now = { problems, kept };
    const files = changed.map((file) => toModulePath(path.join(root, file)));
    for (const environment of Object.values(server.environments)) {
      for (const file of files) {
        for (const module of environment.moduleGraph.getModulesByFile(file) ?? []) {
          environment.moduleGraph.invalidateModule(module);
        }
      }
    }
    if (changed.length) server.ws.send({ type: 'full-reload' });
    server.ws.send('content:problems', now);
    if (problems.length) console.log(`\n${report(problems, process.stdout.hasColors?.() ?? false)}`);
    else if (had) console.log(counted([]));
  };

  return {
    name: 'content-live-preview',
    enforce: 'pre',
    apply: 'serve',
    config: () => ({
      server: {
        watch: { ignored: (file: string) => unwatched.some((one) => `${toModulePath(file)}/`.startsWith(one)) },
      },
    }),
    configureServer(serving) {
      server = serving;
      check.listen((checked) => onChecked(serving, checked));
      let later: NodeJS.Timeout | undefined;
      const onEdit = (file: string) => {
        if (!path.resolve(file).startsWith(folder)) return;
        forgetMistakes();
        for (const { moduleGraph } of Object.values(serving.environments))
          for (const module of moduleGraph.getModulesByFile(PAGES) ?? []) moduleGraph.invalidateModule(module);
        clearTimeout(later);
        later = setTimeout(() => {
          check.look();
          serving.ws.send({ type: 'full-reload' });
        }, 30);
      };
      serving.watcher.add(folder);
      serving.watcher.on('add', onEdit).on('change', onEdit).on('unlink', onEdit);
      serving.ws.on('content:ask', (_, client: WebSocketClient) => client.send('content:problems', now));
    },
    resolveId: (id) => (id === MISTAKES_MODULE ? `\0${id}` : undefined),
    async load(id) {
      if (id === `\0${MISTAKES_MODULE}`) {
        const { checked } = check;
        const told = await Promise.race([checked, after(PATIENCE, undefined, { ref: false })]);
        if (!told) void checked.then(forgetMistakes);
        return `export default ${told?.problems.some(isError)};`;
      }
      const file = path.normalize(id);
      if (!file.startsWith(folder) || !file.endsWith('.mdx')) return undefined;
      return check.lesson(toModulePath(path.relative(root, file)));
    },
  };
}

/** Vite writes paths with forward slashes on every system. */
function toModulePath(file: string): string {
  return file.replaceAll('\\', '/');
}
