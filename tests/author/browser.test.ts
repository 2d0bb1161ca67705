import { expect, test } from 'vitest';
import { findBrowser } from '../browser.ts';
import { countPlaywright, countVitest } from '../count.ts';

const machine = (platform: NodeJS.Platform, environment: NodeJS.ProcessEnv, ...files: string[]) => ({
  platform,
  environment,
  exists: (file: string) => files.includes(file),
});

test.each([
  [
    'what the environment names',
    { CHROMIUM: '/opt/c', PATH: '/usr/bin' },
    ['/opt/c', '/own', '/usr/bin/chromium'],
    '/opt/c',
  ],
  ['Playwright’s own', { PATH: '/usr/bin' }, ['/own', '/usr/bin/chromium'], '/own'],
  [
    'an installed one on the path',
    { PATH: '/bin:/home/x/bin' },
    ['/home/x/bin/google-chrome'],
    '/home/x/bin/google-chrome',
  ],
  ['one in a usual place', { PATH: '' }, ['/snap/bin/chromium'], '/snap/bin/chromium'],
  ['none', { PATH: '/usr/bin', CHROMIUM: '/gone' }, [], undefined],
])('the browser to use: %s', (_, environment, files, found) => {
  expect(findBrowser('/own', machine('linux', environment, ...files))).toBe(found);
});

test('usual places of other systems', () => {
  const mac = '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome';
  expect(findBrowser('/own', machine('darwin', { HOME: '/Users/x' }, mac))).toBe(mac);
  const windows = 'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe';
  expect(findBrowser('', machine('win32', { PROGRAMFILES: 'C:\\Program Files' }, windows))).toBe(windows);
});

test('tests are counted, and so is a file that did not load', () => {
  const ran = (...statuses: string[]) => ({
    status: 'passed',
    assertionResults: statuses.map((status) => ({ status })),
  });
  const json = JSON.stringify({
    testResults: [ran('passed', 'failed', 'skipped'), ran('passed'), { status: 'failed', assertionResults: [] }],
  });
  expect(countVitest(json)).toEqual({ passed: 2, failed: 2, skipped: 1 });
});

test('a test that passes only at the second try has failed, and so has a run that did not start', () => {
  const json = JSON.stringify({ stats: { expected: 5, unexpected: 1, flaky: 1, skipped: 2 }, errors: [{}] });
  expect(countPlaywright(json)).toEqual({ passed: 5, failed: 3, skipped: 2 });
});
