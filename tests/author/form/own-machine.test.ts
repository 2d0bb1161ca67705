import { expect, test } from 'vitest';
import { refusal } from '../../../src/author/form/same-machine.ts';

const json = { 'content-type': 'application/json' };
const ours = { host: 'localhost:4321', origin: 'http://localhost:4321' };

test.each([
  ['a page of this site reads', '127.0.0.1', 'GET', { host: 'localhost:4321' }],
  ['by another name of this machine', '::1', 'GET', { host: '[::1]:4321' }],
  ['and writes', '::ffff:127.0.0.1', 'POST', { ...ours, ...json }],
  ['by its number', '127.0.0.1', 'POST', { host: '127.0.0.1:80', origin: 'http://127.0.0.1:80', ...json }],
])('%s', (_, remote, method, headers) => {
  expect(refusal({ remote, method, headers })).toBeUndefined();
});

const ELSEWHERE = 'The form works only on the machine where npm start runs.';
const FOREIGN = 'This request does not come from a page of this site.';

test.each([
  ['another machine of the house', '192.168.0.7', 'GET', { host: '192.168.0.2:4321' }, ELSEWHERE],
  ['another machine that calls this one localhost', '192.168.0.7', 'GET', { host: 'localhost:4321' }, ELSEWHERE],
  ['a name elsewhere that leads to this machine', '127.0.0.1', 'GET', { host: 'evil.example:4321' }, ELSEWHERE],
  ['a name that looks like this machine', '127.0.0.1', 'GET', { host: '127.0.0.1.evil.example' }, ELSEWHERE],
  ['no name at all', '127.0.0.1', 'GET', {}, ELSEWHERE],
  ['no line at all', undefined, 'GET', { host: 'localhost' }, ELSEWHERE],
  ['a page elsewhere that reads', '127.0.0.1', 'GET', { ...ours, origin: 'https://evil.example' }, FOREIGN],
  ['a page elsewhere that writes', '127.0.0.1', 'POST', { ...ours, ...json, origin: 'https://evil.example' }, FOREIGN],
  [
    'another program of this machine',
    '127.0.0.1',
    'POST',
    { ...ours, ...json, origin: 'http://localhost:8080' },
    FOREIGN,
  ],
  ['a page that hides where it comes from', '127.0.0.1', 'POST', { ...ours, ...json, origin: 'null' }, FOREIGN],
  [
    'a write that says nothing of where it comes from',
    '127.0.0.1',
    'POST',
    { host: 'localhost:4321', ...json },
    FOREIGN,
  ],
  [
    'a form, which any page may send',
    '127.0.0.1',
    'POST',
    { ...ours, 'content-type': 'text/plain' },
    'This is not a change.',
  ],
])('%s is refused', (_, remote, method, headers, why) => {
  expect(refusal({ remote, method, headers })).toBe(why);
});
