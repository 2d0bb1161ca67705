import path from 'node:path';
import type { Plugin, ViteDevServer, WebSocketClient } from 'vite';
import { examine } from '../check/find-content-problems.ts';
import { counted } from '../content/diagnostic.ts';
import { allEntries, readContent } from '../content/read-content.ts';
import { report } from '../check/report.ts';
import { lessonToShow } from './lesson-to-show.ts';
import type { LiveProblems } from './messages.ts';

export const ROOT_MODULE = 'virtual:content-root';

/**
 * While the site is being edited: checks the content after each change, tells the open pages and the terminal, and lets
 * lessons with mistakes show what can be shown.
 */
export function livePreview(root: string): Plugin {
  const folder = path.join(root, 'content') + path.sep;
  /** What each lesson's page is made from, by path on disk. */
  let pages = new Map<string, string>();
  let now: LiveProblems = { problems: [], kept: [] };
  /** Files that could be shown at some time since the start: pages still show that state. */
  const onceUsable = new Set<string>();
  const lastReadable = new Map<string, string>();

  const look = (): Map<string, string> => {
    const content = readContent(root);
    const { problems, unusable } = examine(content, root);
    const files = allEntries(content).map(({ file }) => file);
    for (const file of files) if (!unusable.has(file)) onceUsable.add(file);
    const shown = new Map<string, string>();
    for (const lesson of content.lessons) {
      const own = problems.filter((problem) => problem.file === lesson.file);
      const text = lessonToShow(lesson, own, lastReadable.get(lesson.file));
      if (lesson.lesson.faults.length === 0) lastReadable.set(lesson.file, text);
      shown.set(path.join(root, lesson.file), text);
    }
    now = { problems, kept: files.filter((file) => unusable.has(file) && onceUsable.has(file)) };
    return shown;
  };

  const again = (server: ViteDevServer) => {
    const before = pages;
    const had = now.problems.length;
    pages = look();
    const changed = [...pages]
      .filter(([file, text]) => before.has(file) && before.get(file) !== text)
      .map(([file]) => file);
    for (const environment of Object.values(server.environments)) {
      for (const file of changed) {
        for (const module of environment.moduleGraph.getModulesByFile(toModulePath(file)) ?? []) {
          environment.moduleGraph.invalidateModule(module);
        }
      }
    }
    if (changed.length) server.ws.send({ type: 'full-reload' });
    server.ws.send('content:problems', now);
    if (now.problems.length) console.log(`\n${report(now.problems, process.stdout.hasColors?.() ?? false)}`);
    else if (had) console.log(counted([]));
  };

  return {
    name: 'content-live-preview',
    enforce: 'pre',
    apply: 'serve',
    configureServer(server) {
      pages = look();
      let later: NodeJS.Timeout | undefined;
      const onEdit = (file: string) => {
        if (!path.resolve(file).startsWith(folder)) return;
        clearTimeout(later);
        later = setTimeout(() => {
          // A file may be gone again while it is read; the preview goes on, and looks anew after the next change.
          try {
            again(server);
          } catch (error) {
            console.error(`\nThe content could not be read: ${error instanceof Error ? error.message : String(error)}`);
          }
        }, 30);
      };
      server.watcher.add(folder);
      server.watcher.on('add', onEdit).on('change', onEdit).on('unlink', onEdit);
      server.ws.on('content:ask', (_, client: WebSocketClient) => client.send('content:problems', now));
    },
    resolveId: (id) => (id === ROOT_MODULE ? `\0${id}` : undefined),
    load(id) {
      if (id === `\0${ROOT_MODULE}`) return `export default ${JSON.stringify(root)};`;
      return pages.get(path.normalize(id));
    },
  };
}

/** Vite writes paths with forward slashes on every system. */
const toModulePath = (file: string): string => file.replaceAll('\\', '/');
