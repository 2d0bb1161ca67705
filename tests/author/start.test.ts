import { expect, test } from 'vitest';
import { readArguments } from '../../src/author/arguments.ts';
import { COMMAND, serverSettings } from '../../src/author/start.ts';

test.each([
  [[], {}],
  [['--port', '4000'], { port: 4000 }],
  [['--host'], { host: '0.0.0.0' }],
  [['--host', '--port', '4000'], { host: '0.0.0.0', port: 4000 }],
  [['--host', '127.0.0.1', '--port=80'], { host: '127.0.0.1', port: 80 }],
])('%j', (args, settings) => {
  const asked = readArguments(COMMAND, args, {});
  expect(asked.ok && serverSettings(asked.values)).toEqual(settings);
});

test('a port that is none is refused in words', () => {
  expect(() => serverSettings({ port: 'four', host: undefined })).toThrow(
    '--port four: a port is a whole number from 1 to 65535.',
  );
});
