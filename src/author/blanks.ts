/** The files that `npm run new` writes: short, true to the check, and with a word on what belongs where. */
import { resolveProject, steppedPleats } from '../core/project/index.ts';
import type { Edition } from '../core/measure/index.ts';
import type { MaterialsFile, ProjectFile } from '../core/project/schema.ts';
import { schemaLine } from '../site/content/editor-files.ts';

/** A text as YAML writes it after a colon: in quotes where it would not be read as it stands. */
export const inYaml = (text: string): string =>
  /^[\p{L}\p{N}][^#:]*$/u.test(text) && !/^(true|false|null|yes|no|\d.*)$/i.test(text) ? text : JSON.stringify(text);

export function courseFile(
  id: string,
  course: { title: string; project?: string | undefined; lesson: string },
): string {
  return `${schemaLine(`content/courses/${id}/course.yaml`, 'course')}
title: ${inYaml(course.title)}
summary: What a maker can do after this course. Write two or three sentences here.
level: first steps # or: some experience, experienced
${course.project === undefined ? '# project: the folder name of the project that the lessons make' : `project: ${course.project}`}
lessons:
  - ${course.lesson}
`;
}

/** A flat panel with a size that learners may change: the smallest project there is. */
export function projectFile(id: string, title: string, edition: Edition, materials: MaterialsFile | undefined): string {
  const cloth = Object.entries(materials ?? {}).find(([, { kind }]) => kind === 'cloth')?.[0];
  return `${schemaLine(`content/projects/${id}/project.yaml`, 'project')}
# Every number of the project, and the only place where a number is written down.
title: ${inYaml(title)}
units: ${edition} # what a number without a unit means

measures:
  # Start from what it must hold, or from the size you wish for. Each ruler has its own value.
  width:
    { in: 8, mm: 200, between: { in: [6, 12], mm: [150, 300] }, step: { in: 1/4, mm: 5 }, label: Width of the panel }
  height:
    { in: 6, mm: 150, between: { in: [4, 10], mm: [100, 250] }, step: { in: 1/4, mm: 5 }, label: Height of the panel }
  seam: { in: 1/4, mm: 6, label: Seam allowance }

  # What follows from them.
  cut width: { is: width + 2 * seam, label: Width to cut }
  cut height: { is: height + 2 * seam, label: Height to cut }
${
  cloth === undefined
    ? ''
    : `
materials:
  outer: { use: ${cloth}, label: Cloth }
`
}
pieces:
  panel:
    label: Panel
${cloth === undefined ? '' : '    from: outer\n'}    size: [cut width, cut height] # with the seam allowance
`;
}

/** A lesson with the project's words already in place. */
export function lessonFile(title: string, project: ProjectFile | undefined, edition: Edition): string {
  const top = `---
title: ${inYaml(title)}
summary: What a maker finds out here. Write one or two sentences.
minutes: 30
---`;
  if (!project) return `${top}\n\nWrite your lesson here.\n`;
  const { measures, pieces } = resolveProject(project, { edition });
  const own = Object.values(measures).filter(({ source, dimension }) => source === 'stated' && dimension === 1);
  const first = own.find(({ adjustable }) => adjustable) ?? own[0];
  const asked = Object.values(measures).find(({ source, dimension }) => source === 'derived' && dimension === 1);
  const drawn = Object.values(pieces)[0];
  const pleated = Object.entries(project.pieces).find(([, piece]) => steppedPleats(piece))?.[0];
  return [
    top,
    `{/* These are the words for the numbers of your project. Keep what you need, and write your lesson round them. */}`,
    first && `## Choose the size\n\n${first.label}: here it is <Size of="${first.name}" />.`,
    own.some(({ adjustable }) => adjustable) && '<YourSize />',
    asked &&
      `## Work it out\n\nHere is the sum for this: ${asked.label}.\n\n<Working of="${asked.name}" />\n\n` +
        `<AskSize of="${asked.name}" hint="Go through the sum above, one number at a time.">\n\n` +
        `Work it out for your own size. How much is it?\n\n</AskSize>`,
    pleated !== undefined && `## Fold it\n\n<PleatStudy piece="${pleated}" />`,
    drawn && `## Cut it\n\nCheck the list against your sums before you cut.\n\n<Piece name="${drawn.name}" />`,
    drawn && '<CutList />',
    project.materials && '<MaterialsList />',
    '<Caution of="blade" />',
  ]
    .filter((part) => part)
    .join('\n\n')
    .concat('\n');
}
