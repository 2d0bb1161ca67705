import { expect, test } from 'vitest';
import { filesToEdit, serverSettings } from '../../src/author/start.ts';
import { readContent } from '../../src/site/content/read-content.ts';
import { contentFolder } from '../site/content-folder.ts';

test('the files to edit, each with what it holds', () => {
  expect(filesToEdit(readContent(contentFolder()))).toEqual([
    ['content/projects/folio/project.yaml', 'the numbers of Folio'],
    ['content/courses/pleats/course.yaml', 'the order of the lessons of Pleats'],
    ['content/courses/pleats/01-size.mdx', 'the lesson Size it'],
    ['content/courses/pleats/02-fold.mdx', 'the lesson Fold it'],
    ['content/site.yaml', 'the name of the school and how its pages speak'],
    ['content/materials.yaml', 'cloth, interfacing, thread and hardware'],
    ['content/glossary.yaml', 'the terms of the trade'],
  ]);
});

test.each([
  [[], {}],
  [['--port', '4000'], { port: 4000 }],
  [['--host'], { host: '0.0.0.0' }],
  [['--host', '--port', '4000'], { host: '0.0.0.0', port: 4000 }],
  [['--host', '127.0.0.1', '--port=80'], { host: '127.0.0.1', port: 80 }],
])('%j', (args, settings) => {
  expect(serverSettings(args)).toEqual(settings);
});

test('a port that is none is refused in words', () => {
  expect(() => serverSettings(['--port', 'four'])).toThrow('--port four: a port is a whole number from 1 to 65535.');
});
