/**
 * Checks the content beside the pages of the live preview: a large school takes longer than anybody waits for a page. A
 * part of the content that did not change is not looked at again, and a lesson that is asked for comes first.
 */
import { setImmediate } from 'node:timers/promises';
import { parentPort, workerData } from 'node:worker_threads';
import { aroundParts, examinePartAgain, partsOf } from '../check/content-parts.ts';
import type { AroundParts, ContentPart, Known } from '../check/content-parts.ts';
import { allTogether, examineWhole } from '../check/find-content-problems.ts';
import type { ContentReport } from '../check/find-content-problems.ts';
import { inReadingOrder } from '../content/diagnostic.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import { allEntries, readContent } from '../content/read-content.ts';
import type { Content, LessonEntry } from '../content/read-content.ts';
import type { Checked, FromCheck, ToCheck } from './content-check.ts';
import { lessonToShow } from './lesson-to-show.ts';
import { overviewOf } from './overview.ts';

const root = workerData as string;
const port = parentPort!;
const say = (message: FromCheck) => port.postMessage(message);

/** The content as it was read last, and what can be told of it without its projects. */
type Reading = { content: Content; whole: ContentReport; parts: ContentPart[]; around: AroundParts };

let reading: Reading | undefined;
const known: Known = new Map();
/** Files that could be shown at some time since the start: pages still show that state. */
const onceUsable = new Set<string>();
const lastReadable = new Map<string, string>();
/** What the pages of lessons are made from, as they were told last. */
const shown = new Map<string, string>();
let isDue = false;
let isChecking = false;

port.on('message', (message: ToCheck) => {
  if (message.kind === 'look') {
    isDue = true;
    void check();
  } else {
    let text: string | undefined;
    try {
      text = lessonNow(message.file);
    } catch {
      // What cannot be read is told by the check; the page then shows the file as it is.
    }
    say({ kind: 'lesson', id: message.id, text });
  }
});

/** The content as it lies on the disk now. */
function present(): Reading {
  const content = readContent(root, reading?.content);
  if (reading && isSame(content, reading.content)) return reading;
  const parts = partsOf(content);
  reading = { content, whole: examineWhole(content), parts, around: aroundParts(content, root, {}) };
  return reading;
}

function isSame(content: Content, before: Content): boolean {
  const [entries, earlier] = [allEntries(content), allEntries(before)];
  if (entries.length !== earlier.length || entries.some((entry, i) => entry !== earlier[i])) return false;
  return JSON.stringify(content.problems) === JSON.stringify(before.problems);
}

/** What the page of a lesson is made from; undefined where there is no such lesson. */
function lessonNow(file: string): string | undefined {
  const { whole, parts, around } = present();
  const part = parts.find(({ lessons }) => lessons.some(({ lesson }) => lesson.file === file));
  const entry = part?.lessons.find(({ lesson }) => lesson.file === file)?.lesson;
  if (!part || !entry) return undefined;
  const found = [...whole.problems, ...examinePartAgain(part, around, known).problems];
  return shownFrom(entry, inReadingOrder(found.filter((problem) => problem.file === file)));
}

function shownFrom(entry: LessonEntry, problems: readonly Diagnostic[]): string {
  const text = lessonToShow(entry, problems, lastReadable.get(entry.file));
  if (entry.lesson.faults.length === 0) lastReadable.set(entry.file, text);
  shown.set(entry.file, text);
  return text;
}

async function check(): Promise<void> {
  if (isChecking) return;
  isChecking = true;
  while (isDue) {
    isDue = false;
    try {
      const now = present();
      say({ kind: 'read', overview: overviewOf(now.content) });
      const found: ContentReport[] = [];
      for (const part of now.parts) {
        await setImmediate(); // who asks for a lesson is answered in between
        if (isDue) break;
        found.push(examinePartAgain(part, now.around, known));
      }
      if (!isDue) say({ kind: 'checked', checked: checked(now.content, allTogether(now.whole, found)) });
    } catch (error) {
      // A file may be gone again while it is read; the preview goes on, and looks anew after the next change.
      say({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
    }
  }
  isChecking = false;
}

function checked({ lessons, ...rest }: Content, { problems, unusable }: ContentReport): Checked {
  const files = allEntries({ lessons, ...rest }).map(({ file }) => file);
  for (const file of files) if (!unusable.has(file)) onceUsable.add(file);
  const inFile = Map.groupBy(problems, ({ file }) => file);
  const changed = lessons.filter((entry) => {
    const before = shown.get(entry.file);
    return shownFrom(entry, inFile.get(entry.file) ?? []) !== before && before !== undefined;
  });
  return {
    problems,
    kept: files.filter((file) => unusable.has(file) && onceUsable.has(file)),
    changed: changed.map(({ file }) => file),
  };
}
