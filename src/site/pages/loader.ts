import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Loader, LoaderContext } from 'astro/loaders';
import type { ProjectFile } from '../../core/project/schema.ts';
import { allEntries, readContent, type Content, type Entry, type LessonEntry } from '../content/read-content.ts';
import type { LessonFront } from '../content/schemas.ts';

const SHELVES = ['site', 'materials', 'glossary', 'projects', 'courses', 'lessons'] as const;
type Shelf = (typeof SHELVES)[number];

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
    const before = await reading;
    reading = undefined;
    for (const [shelf, context] of contexts) await fill(shelf, context, await (reading ??= read(context, before)));
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
      // A build needs it no more, and a large one would weigh on all that follows.
      if (!context.watcher && contexts.size === SHELVES.length) reading = undefined;
    },
  });
}

type Reading = {
  content: Content;
  /** Whether a project has every number of the lesson's own size; in a build all have, since it ends before otherwise. */
  isUsable: (project: Entry<ProjectFile>) => boolean;
  /** Whether a file and the materials are as they were at the reading before. */
  isAsBefore: (entry: Entry<unknown>) => boolean;
};

/** Reads the content; what did not change since `before` is taken over. */
async function read({ config, watcher }: LoaderContext, before?: Reading): Promise<Reading> {
  const content = readContent(fileURLToPath(config.root), before?.content);
  const { materials } = content;
  const earlier = new Set(before?.content.materials === materials ? allEntries(before.content) : []);
  const isAsBefore = (entry: Entry<unknown>) => earlier.has(entry);
  if (!watcher) return { content, isAsBefore, isUsable: () => true };
  const { hasAllNumbers } = await import('../check/project-problems.ts');
  const isUsable = ({ value }: Entry<ProjectFile>) => value !== undefined && hasAllNumbers(value, materials.value);
  return { content, isAsBefore, isUsable };
}

async function fill(shelf: Shelf, context: LoaderContext, reading: Reading): Promise<void> {
  const entries: Entry<unknown>[] = [reading.content[shelf]].flat();
  const wanted = new Set(entries.map((entry) => entry.id));
  for (const id of context.store.keys()) if (!wanted.has(id)) context.store.delete(id);
  for (const entry of entries) {
    if (reading.isAsBefore(entry)) continue;
    const { id, file, text } = entry;
    const data = 'lesson' in entry ? lessonData(entry as LessonEntry) : entry.value;
    if (data === undefined) continue;
    if (shelf === 'projects' && !reading.isUsable(entry as Entry<ProjectFile>)) continue;
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
