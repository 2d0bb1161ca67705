import type { Diagnostic } from '../../../src/core/measure/index.ts';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'yaml';
import { MaterialsFile, ProjectFile, resolveProject } from '../../../src/core/project/index.ts';
import type { Pattern, Settings } from '../../../src/core/project/index.ts';

/** A project as an instructor writes it. */
export const project = (yaml: string): ProjectFile => ProjectFile.parse(parse(yaml));

/** A project worked out. */
export const resolved = (yaml: string, settings: Settings = {}): Pattern => resolveProject(project(yaml), settings);

const content = (file: string): unknown =>
  parse(readFileSync(path.join(import.meta.dirname, '../../../content', file), 'utf8'));

const demo = (id: string) => (): ProjectFile => ProjectFile.parse(content(`projects/${id}/project.yaml`));
export const [folio, notionsPouch, tableSet] = [demo('swatch-folio'), demo('notions-pouch'), demo('table-set')];
export const shelf = (): MaterialsFile => MaterialsFile.parse(content('materials.yaml'));

/** The errors alone, each as place, code and message in one line, which is how they read best when a test fails. */
export const lines = (findings: readonly Diagnostic[]): string[] =>
  findings.map(({ severity, place, code, message, fix }) =>
    [`${severity} ${place.join(' > ')}`, code, fix === undefined ? message : `${message} ${fix}`].join(': '),
  );

const classFile = (name: string): unknown =>
  parse(readFileSync(path.join(import.meta.dirname, `../../fixtures/classes/${name}.yaml`), 'utf8'));
/** A project of tests/fixtures/classes, and what all of them are made of. */
export const classProject = (name: string) => (): ProjectFile => ProjectFile.parse(classFile(name));
export const classMaterials = (): MaterialsFile => MaterialsFile.parse(classFile('materials'));

/** A project as it was when its recording was spoken. */
export const recordedProject = (name: string) => (): ProjectFile =>
  ProjectFile.parse(
    parse(readFileSync(path.join(import.meta.dirname, `../../fixtures/recordings/${name}.yaml`), 'utf8')),
  );
