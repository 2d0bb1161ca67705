import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Loader, LoaderContext } from 'astro/loaders';

const COURSES = 'content/courses';

/**
 * Names the lesson files to Astro, which compiles one when its page is made. None of them is read here: a school of
 * thousands of lessons opens as soon as a small one.
 */
export const lessonFiles = (): Loader => ({
  name: 'lesson-files',
  load(context) {
    const { config, watcher } = context;
    const root = fileURLToPath(config.root);
    context.store.clear();
    fill(context, root);
    if (!watcher) return Promise.resolve();
    const courses = path.join(root, COURSES) + path.sep;
    watcher.add(courses);
    let later: NodeJS.Timeout | undefined;
    const onChange = (file: string) => {
      if (!path.resolve(file).startsWith(courses) || !file.endsWith('.mdx')) return;
      clearTimeout(later);
      later = setTimeout(() => fill(context, root), 30);
    };
    watcher.on('add', onChange).on('unlink', onChange);
    return Promise.resolve();
  },
});

function fill({ store }: LoaderContext, root: string): void {
  const files = new Set(filesBelow(root));
  for (const id of store.keys()) if (!files.has(id)) store.delete(id);
  for (const id of files) if (!store.has(id)) store.set({ id, data: {}, filePath: id, deferredRender: true });
}

/** From the root, with forward slashes. */
function filesBelow(root: string): string[] {
  const folder = path.join(root, COURSES);
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap(({ name }) =>
      readdirSync(path.join(folder, name))
        .filter((file) => file.endsWith('.mdx'))
        .map((file) => `${COURSES}/${name}/${file}`),
    );
}
