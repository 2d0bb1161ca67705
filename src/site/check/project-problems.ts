import { checkAll, checkMaterials, metIn, resolveProject } from '../../core/project/index.ts';
import type { Pattern, WorkOut } from '../../core/project/index.ts';
import type { MaterialsFile, ProjectFile } from '../../core/project/schema.ts';
import { capital, quote } from '../../core/measure/index.ts';
import type * as core from '../../core/measure/index.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { Entry } from '../content/read-content.ts';
import { bracketProblems } from './bracket-problems.ts';
import { textsOfProject } from './texts.ts';
import { typedNumbersInFile } from './typed-numbers.ts';

/** A project worked out in both editions. */
export type Variant = Record<core.Edition, Pattern> & {
  /** The one option that differs from how the lesson has it: With “zip”. None for the lesson's own. */
  name?: string;
};

/** A project in every way that differs from the lesson in one option; the lesson's own first. */
export type WorkedOut = {
  file: ProjectFile;
  materials: MaterialsFile | undefined;
  variants: [Variant, ...Variant[]];
  /** In any other way; what was worked out once, with the steps made up from it, is kept. */
  inAnyWay: WorkOut;
  /** What is wrong with the sums looked at so far, by their text: lessons ask for the same ones many times. */
  sumFaults: Map<string, core.Diagnostic<core.InText> | undefined>;
};

export function workOut(file: ProjectFile, materials: MaterialsFile | undefined): WorkedOut {
  const all = Object.entries(file.options ?? {});
  const known = new Map<string, Pattern>();
  const inAnyWay: WorkOut = (edition, options, values) => {
    // Where sliders stand at their ends is looked at once.
    if (values) return resolveProject(file, { edition, options, values, materials });
    const ways = all.map(([name, option]) => options[name] ?? option.default ?? false);
    const key = `${edition} ${ways.join()}`;
    let pattern = known.get(key);
    if (!pattern) known.set(key, (pattern = resolveProject(file, { edition, options, materials })));
    return pattern;
  };
  const variant = (options: Record<string, boolean>, name?: string): Variant => ({
    inch: inAnyWay('inch', options),
    metric: inAnyWay('metric', options),
    ...(name && { name }),
  });
  const others = all.map(([name, option]) => {
    const on = !option.default;
    return variant({ [name]: on }, `${on ? 'with' : 'without'} ${quote(name)}`);
  });
  return { file, materials, variants: [variant({}), ...others], inAnyWay, sumFaults: new Map() };
}

/** Whether every number of the lesson's own variant could be worked out. A card that does not fit is no hindrance. */
export const isWhole = ({ variants: [{ inch, metric }] }: WorkedOut): boolean => isSound(inch) && isSound(metric);

/** The same of a project of which nothing else is asked. */
export const hasAllNumbers = (file: ProjectFile, materials: MaterialsFile | undefined): boolean =>
  (['inch', 'metric'] as const).every((edition) => isSound(resolveProject(file, { edition, materials })));

const isSound = ({ findings }: Pattern): boolean => !findings.some(({ severity }) => severity === 'error');

/** What is wrong with a project in any edition and with any of its options, each finding at its place in the file; `ends` tries what learners may choose. */
export function projectProblems(entry: Entry<ProjectFile>, worked: WorkedOut, ends = false): Diagnostic[] {
  const { file, materials, inAnyWay } = worked;
  const texts = textsOfProject(entry);
  return [
    ...checkAll(file, materials, inAnyWay, { ends }).map((finding) => placed(entry, finding, metIn(finding))),
    ...bracketProblems(entry.file, texts, { project: entry.id, worked, projects: [] }),
    ...typedNumbersInFile(entry, texts, worked),
  ];
}

/** What the checks of materials.yaml by itself find. */
export function materialProblems(entry: Entry<MaterialsFile>): Diagnostic[] {
  return entry.value ? checkMaterials(entry.value).map((finding) => placed(entry, finding, '')) : [];
}

function placed({ file, locate }: Entry<unknown>, finding: core.Diagnostic, where: string): Diagnostic {
  const { severity, code, message, fix } = finding;
  const met = capital(where);
  // Some say it themselves: With “flap” there is no “facing” for this step.
  const said = where === '' || message.startsWith(met) ? message : `${met}: ${message}`;
  return { file, ...locate(finding.place, finding), severity, code, message: said, fix };
}
