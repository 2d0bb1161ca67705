import { checkAll, checkMaterials, metIn, resolveProject, wayOf } from '../../core/project/index.ts';
import type { Pattern, ProjectWay, WorkOut } from '../../core/project/index.ts';
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
  /** The one thing that differs from how the lesson has it: with “zip”, size “large”. None for the lesson's own. */
  name?: string;
};

/** A project in every way that differs from the lesson in its size, one option or one choice; the lesson's own first. */
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
  const own: ProjectWay = wayOf(resolveProject(file, { materials }));
  const known = new Map<string, Pattern>();
  const inAnyWay: WorkOut = (edition, way, values) => {
    // Where sliders stand at their ends is looked at once.
    if (values) return resolveProject(file, { edition, ...way, values, materials });
    const full = { ...own.options, ...way.options };
    const key = JSON.stringify([edition, way.size ?? own.size, Object.entries(full).sort()]);
    let pattern = known.get(key);
    if (!pattern) known.set(key, (pattern = resolveProject(file, { edition, ...way, materials })));
    return pattern;
  };
  const variant = (way: Partial<ProjectWay>, name?: string): Variant => ({
    inch: inAnyWay('inch', way),
    metric: inAnyWay('metric', way),
    ...(name && { name }),
  });
  const { options, choices, sizes } = inAnyWay('inch', {});
  const others = [
    ...Object.entries(options).map(([name, { default: on }]) =>
      variant({ options: { [name]: !on } }, `${on ? 'without' : 'with'} ${quote(name)}`),
    ),
    ...Object.entries(choices).flatMap(([name, { of, default: chosen }]) =>
      Object.keys(of)
        .filter((one) => one !== chosen)
        .map((one) => variant({ options: { [name]: one } }, `with ${quote(`${name}: ${one}`)}`)),
    ),
    ...(sizes?.of ?? [])
      .filter((size) => size !== sizes!.default)
      .map((size) => variant({ size }, `size ${quote(size)}`)),
  ];
  return { file, materials, variants: [variant({}), ...others], inAnyWay, sumFaults: new Map() };
}

/** Whether every number of the lesson's own variant could be worked out. A card that does not fit is no hindrance. */
export const isWhole = ({ variants: [{ inch, metric }] }: WorkedOut): boolean => isSound(inch) && isSound(metric);

const isSound = ({ findings }: Pattern): boolean => !findings.some(({ severity }) => severity === 'error');

/** What is wrong with a project in any edition, in every size and with its options and choices, each finding at its place in the file; `ends` tries what learners may choose. */
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
