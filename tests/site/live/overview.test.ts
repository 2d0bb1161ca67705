import { expect, test } from 'vitest';
import { readContent } from '../../../src/site/content/read-content.ts';
import { overviewOf } from '../../../src/site/live/overview.ts';
import { contentFolder } from '../content-folder.ts';

test('the files to edit, each with what it holds', () => {
  const { files, projects, site } = overviewOf(readContent(contentFolder()));
  expect([site, projects]).toEqual(['The Long Table', ['folio']]);
  expect(files).toEqual([
    ['content/projects/folio/project.yaml', 'the numbers of Folio'],
    ['content/courses/pleats/course.yaml', 'the order of the lessons of Pleats'],
    ['content/courses/pleats/01-size.mdx', 'the lesson Size it'],
    ['content/courses/pleats/02-fold.mdx', 'the lesson Fold it'],
    ['content/site.yaml', 'the name of the school and how its pages speak'],
    ['content/materials.yaml', 'cloth, interfacing, thread and hardware'],
    ['content/glossary.yaml', 'the terms of the trade'],
  ]);
});

test('of many lessons the folders are listed', () => {
  const lesson = '---\ntitle: One more\nsummary: It goes on.\nminutes: 5\n---\n\nSew.\n';
  const many = Array.from({ length: 41 }, (_, i) => [`content/courses/pleats/${i + 10}-more-${i}.mdx`, lesson]);
  const { files } = overviewOf(readContent(contentFolder(Object.fromEntries(many) as Record<string, string>)));
  expect(files).toContainEqual([
    'content/courses/pleats/course.yaml',
    'the order of the lessons of Pleats; 43 of them lie beside it',
  ]);
  expect(files.some(([file]) => file.endsWith('.mdx'))).toBe(false);
});
