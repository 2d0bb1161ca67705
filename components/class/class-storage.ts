/**
 * What a teacher's own browser keeps of a class: an entry for each learner, so that two tabs lose nothing of each other.
 * It lies beside what learners keep, and not among it: nobody's progress file takes the names of a class along.
 */
import { asRecord, prefix, PREFIX, troubleOf, type StorageTrouble } from '../page/storage.ts';
import { changeNames, nameKey, type Change, type ClassLearner } from './learners.ts';
import type { HandIn } from './hand-in.ts';
import { LONGEST_NOTE } from './note.ts';

/** What the keys of a course's class begin with. */
const beginning = (course: string): string => `course-kit-class:${prefix().slice(PREFIX.length)}${course}:`;

/** Whether anybody of a class is kept. */
export function isClassKept(course: string): boolean {
  try {
    const start = beginning(course);
    return Object.keys(localStorage).some((key) => key.startsWith(start));
  } catch {
    return false;
  }
}

/** Keeps a learner; undefined takes them out. Returns why that could not be done. */
export function keepLearner(
  course: string,
  key: string,
  learner: ClassLearner | undefined,
): StorageTrouble | undefined {
  try {
    if (learner) localStorage.setItem(beginning(course) + key, JSON.stringify(learner));
    else localStorage.removeItem(beginning(course) + key);
    return undefined;
  } catch (cause) {
    return troubleOf(cause);
  }
}

/**
 * Everybody who is kept. Anything may lie there: what is not of the right shape is passed over.
 *
 * @param read tells whether a value is a hand-in
 */
export function keptLearners(course: string, read: (value: unknown) => HandIn | undefined): ClassLearner[] {
  try {
    const start = beginning(course);
    const keys = Object.keys(localStorage).filter((key) => key.startsWith(start));
    return keys.flatMap((key) => learnerIn(localStorage.getItem(key), read));
  } catch {
    return [];
  }
}

function learnerIn(text: string | null, read: (value: unknown) => HandIn | undefined): ClassLearner[] {
  let kept: Record<string, unknown> | undefined;
  try {
    kept = asRecord(JSON.parse(text ?? 'null'));
  } catch {
    return [];
  }
  const handIn = read(kept?.handIn);
  if (!kept || !handIn) return [];
  const { times, note } = kept;
  const change = changeIn(kept.change);
  return [
    {
      key: nameKey(handIn.name),
      handIn,
      times: typeof times === 'number' && times >= 1 ? Math.floor(times) : 1,
      ...(change && { change }),
      ...(typeof note === 'string' && note !== '' && { note: note.slice(0, LONGEST_NOTE) }),
    },
  ];
}

function changeIn(value: unknown): Change | undefined {
  const record = asRecord(value);
  const counts = changeNames.map((name) => record?.[name]);
  if (!counts.every((one) => typeof one === 'number' && one >= 0)) return undefined;
  return Object.fromEntries(changeNames.map((name, i) => [name, counts[i]])) as Change;
}

/** Forgets a whole class. */
export function forgetClass(course: string): StorageTrouble | undefined {
  try {
    const start = beginning(course);
    for (const key of Object.keys(localStorage)) if (key.startsWith(start)) localStorage.removeItem(key);
    return undefined;
  } catch (cause) {
    return troubleOf(cause);
  }
}

/** Calls back when another tab changed the class. Returns a function that stops it. */
export function onClassChange(course: string, changed: () => void): () => void {
  const hear = ({ key }: StorageEvent) => {
    if (key === null || key.startsWith(beginning(course))) changed();
  };
  addEventListener('storage', hear);
  return () => removeEventListener('storage', hear);
}
