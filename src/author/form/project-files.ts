/** Project files between the disk and the form. */
import { existsSync, readFileSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { isScalar, parseDocument } from 'yaml';
import { quote } from '../../core/measure/index.ts';
import { MaterialsFile, ProjectFile } from '../../core/project/schema.ts';
import { readYaml } from '../../site/content/located-yaml.ts';
import type { Place } from '../../site/content/located-yaml.ts';
import { isError, type Diagnostic } from '../../site/content/diagnostic.ts';
import { projectProblems, workOut } from '../../site/check/project-problems.ts';
import { CHANGED_SINCE, refusalFor, writeAuthorFile } from '../write-file.ts';
import { withField, withValue } from '../yaml-edit.ts';
import { sectionsOf, sourceText } from './fields.ts';
import type { ChangeResult, ValueChange, FormState } from './messages.ts';

/** How often a change is put into a file that another hand writes at the same time. */
const TIMES = 5;

/** The project files below one folder, each with its last state that could be read. */
export class ProjectFiles {
  readonly #root: string;
  readonly #put: typeof writeAuthorFile;
  readonly #lastGood = new Map<string, FormState>();

  /**
   * @param root the folder that holds content/
   * @param put what writes; tests put one in that another hand comes before
   */
  constructor(root: string, put = writeAuthorFile) {
    this.#root = root;
    this.#put = put;
  }

  /**
   * A project as the form shows it.
   *
   * @param id name of its folder below content/projects
   * @returns undefined where there is no such project, or no state of it that can be read
   */
  read(id: string): FormState | undefined {
    const full = this.#find(id);
    return full === undefined ? undefined : this.#read(id, readFileSync(full, 'utf8'));
  }

  /**
   * Writes one value into a project file, an old or a new one, and nothing else of its text. What another hand wrote
   * meanwhile stays, also while the change is being checked: the value is put into the file as it is on disk at the end,
   * and where that very value has changed, nothing is written.
   *
   * @returns undefined where there is no such project and was none
   */
  write(id: string, change: ValueChange): ChangeResult | undefined {
    for (let times = 1; ; times += 1) {
      try {
        const answer = this.#write(id, change);
        if (answer !== 'again') return answer;
      } catch (error) {
        return { kind: 'refused', ...refusalFor(fileOf(id), error) };
      }
      if (times < TIMES) continue;
      return {
        kind: 'refused',
        message: 'Another program keeps writing this file.',
        fix: 'Wait until it is done, and try again.',
      };
    }
  }

  #write(id: string, { place, was, value }: ValueChange): ChangeResult | 'again' | undefined {
    const full = this.#find(id);
    if (full === undefined && this.#lastGood.has(id)) {
      const message = `The project ${quote(id)} is no longer there.`;
      return { kind: 'refused', message, fix: 'Put its folder back. What you typed stays here.' };
    }
    if (full === undefined) return undefined;
    const before = readFileSync(full, 'utf8');
    const form = this.#read(id, before);
    if (!form) return undefined;
    if (form.broken) {
      return { kind: 'refused', message: 'The file has a mistake.', fix: 'Mend it in your editor first.' };
    }
    const there = valueAt(before, place);
    if (there !== was) return { kind: 'conflict', form, theirs: there };
    const name = place.at(-1);
    const after =
      was === undefined
        ? typeof name === 'string'
          ? withField(before, place.slice(0, -1), name, value)
          : undefined
        : withValue(before, place, value);
    if (after === undefined) {
      return { kind: 'refused', message: 'This value cannot be written from here.', fix: 'Change it in your editor.' };
    }
    const found = this.#problems(id, after);
    // Of a file that cannot be read the form could show no more.
    const fault = readYaml(after, ProjectFile, fileOf(id)).value
      ? newFault(this.#problems(id, before), found, place, after)
      : found.find(isError);
    if (fault) return { kind: 'refused', message: fault.message, fix: fault.fix };
    const refusal = this.#put(full, after, { before });
    if (refusal?.code === CHANGED_SINCE) return 'again';
    if (refusal) return { kind: 'refused', message: refusal.message, fix: refusal.fix };
    const written = this.#read(id, after)!;
    return { kind: 'written', form: written, line: locate(after, place).line };
  }

  /** Only a project's own file, and only where it truly lies: no name and no link leads out of the content folder. */
  #find(id: string): string | undefined {
    if (!/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id)) return undefined;
    const shelf = path.join(this.#root, 'content/projects');
    const full = path.join(shelf, id, 'project.yaml');
    if (!existsSync(full)) return undefined;
    return realpathSync(full) === path.join(realpathSync(shelf), id, 'project.yaml') ? full : undefined;
  }

  #read(id: string, text: string): FormState | undefined {
    const file = fileOf(id);
    const { value, problems } = readYaml(text, ProjectFile, file);
    if (value) {
      const form = { file, sections: sectionsOf(text), project: value, materials: this.#materials() };
      this.#lastGood.set(id, form);
      return form;
    }
    const last = this.#lastGood.get(id);
    const [{ line, column, message, fix }] = problems as [Diagnostic];
    return last && { ...last, broken: { line, column, message, fix } };
  }

  #materials(): MaterialsFile {
    const full = path.join(this.#root, 'content/materials.yaml');
    if (!existsSync(full)) return {};
    return readYaml(readFileSync(full, 'utf8'), MaterialsFile, 'content/materials.yaml').value ?? {};
  }

  /** Mistakes of one project file by itself. */
  #problems(id: string, text: string): Diagnostic[] {
    const file = fileOf(id);
    const read = readYaml(text, ProjectFile, file);
    if (!read.value) return read.problems;
    return projectProblems({ file, id, text, ...read }, workOut(read.value, this.#materials()));
  }
}

const fileOf = (id: string): string => `content/projects/${id}/project.yaml`;

function valueAt(text: string, place: Place): string | undefined {
  const node = parseDocument(text, { version: '1.2' }).getIn(place, true);
  return isScalar(node) ? sourceText(node) : undefined;
}

/**
 * The mistake that a change makes at its own place: a length that cannot be read, a name that nothing has. What it
 * leads to elsewhere (a card that no longer fits) is for the author to see and to weigh.
 */
function newFault(before: Diagnostic[], after: Diagnostic[], place: Place, text: string): Diagnostic | undefined {
  const { line, column } = locate(text, place);
  const end = column + (valueAt(text, place)?.length ?? 0);
  const known = new Set(before.map(({ message }) => message));
  return after.find(
    (problem) =>
      isError(problem) &&
      !known.has(problem.message) &&
      problem.line === line &&
      problem.column >= column &&
      problem.column <= end,
  );
}

const locate = (text: string, place: Place) => readYaml(text, ProjectFile, '').locate(place);
