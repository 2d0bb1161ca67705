import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Loader, LoaderContext } from 'astro/loaders';
import { readContent, type Content, type Entry, type LessonEntry } from '../content/read-content.ts';
import type { LessonFront } from '../content/schemas.ts';

type Shelf = Exclude<keyof Content, 'problems'>;

/** A lesson as the pages get it: what stands at its top, and where its file lies. */
export type LessonData = LessonFront & Pick<LessonEntry, 'course' | 'slug' | 'fileName'>;

/**
 * Loaders that put the content folder on Astro's shelves, all from one reading of it. A file with a mistake is left
 * out; while the site is being edited, the last state without a mistake stays.
 */
export function contentLoaders(): (shelf: Shelf) => Loader {
  let contexts = new Map<Shelf, LoaderContext>();
  let reading: Promise<Reading> | undefined;
  let later: NodeJS.Timeout | undefined;

  const refresh = async () => {
    reading = undefined;
    for (const [shelf, context] of contexts) await fill(shelf, context, await (reading ??= read(context)));
  };
  const watch = ({ watcher, config, logger }: LoaderContext) => {
    if (!watcher) return;
    const folder = path.join(fileURLToPath(config.root), 'content') + path.sep;
    watcher.add(folder);
    const onEdit = (file: string) => {
      if (!path.resolve(file).startsWith(folder)) return;
      clearTimeout(later);
      later = setTimeout(() => void refresh().catch((error: unknown) => logger.error(String(error))), 30);
    };
    watcher.on('add', onEdit).on('change', onEdit).on('unlink', onEdit);
  };

  return (shelf) => ({
    name: `content-${shelf}`,
    async load(context) {
      if (contexts.size === 0 || contexts.has(shelf)) {
        contexts = new Map();
        reading = undefined;
        watch(context);
      }
      contexts.set(shelf, context);
      context.store.clear();
      await fill(shelf, context, await (reading ??= read(context)));
    },
  });
}

type Reading = { content: Content; unusable: Set<string> };

/** Reads the content; while it is being edited, also which files cannot be shown. A build stops before it comes here. */
async function read({ config, watcher }: LoaderContext): Promise<Reading> {
  const root = fileURLToPath(config.root);
  const content = readContent(root);
  if (!watcher) return { content, unusable: new Set() };
  const { examine } = await import('../check/find-content-problems.ts');
  return { content, unusable: examine(content, root).unusable };
}

async function fill(shelf: Shelf, context: LoaderContext, { content, unusable }: Reading): Promise<void> {
  const entries: Entry<unknown>[] = [content[shelf]].flat();
  const wanted = new Set(entries.map((entry) => entry.id));
  for (const id of context.store.keys()) if (!wanted.has(id)) context.store.delete(id);
  for (const entry of entries) {
    const { id, file, text } = entry;
    const data = 'lesson' in entry ? lessonData(entry as LessonEntry) : entry.value;
    if (data === undefined) continue;
    if (shelf === 'projects' && unusable.has(file)) continue;
    context.store.set({
      id,
      data: await context.parseData({ id, data: data as Record<string, unknown>, filePath: file }),
      filePath: file,
      digest: context.generateDigest(text),
      ...(shelf === 'lessons' ? { body: text, deferredRender: true } : {}),
    });
  }
}

const lessonData = ({ value, course, slug, fileName }: LessonEntry): LessonData | undefined =>
  value && { ...value, course, slug, fileName };
