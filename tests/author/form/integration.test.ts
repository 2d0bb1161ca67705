/** Every request to the form is answered, whatever goes wrong behind it. */
import { PassThrough } from 'node:stream';
import { pathToFileURL } from 'node:url';
import { expect, test, vi } from 'vitest';
import { authorsForm } from '../../../src/author/form/integration.ts';
import { contentFolder } from '../../site/content-folder.ts';

type Handler = (request: unknown, response: unknown, next: () => void) => void;

test('a request that breaks off or fails gets an answer', async () => {
  const root = contentFolder();
  const { hooks } = authorsForm();
  let handler: Handler | undefined;
  const server = { config: { base: '/' }, middlewares: { use: (given: Handler) => (handler = given) } };
  const url = pathToFileURL(`${root}/`);
  const run = (hook: unknown, given: object): unknown => (hook as (given: object) => unknown)(given);
  await run(hooks['astro:config:setup'], { command: 'build', config: { root: url } });
  await run(hooks['astro:server:setup'], { server });
  const body = new PassThrough();
  const request = Object.assign(body, {
    url: '/authoring/form/folio/file.json',
    method: 'POST',
    socket: { remoteAddress: '127.0.0.1' },
    headers: { host: 'localhost:4321', origin: 'http://localhost:4321', 'content-type': 'application/json' },
  });
  const end = vi.fn();
  const response = { statusCode: 200, setHeader: vi.fn(), end };
  handler!(request, response, () => expect.unreachable());
  body.destroy(new Error('The line broke.'));
  await vi.waitFor(() => expect(end).toHaveBeenCalled());
  expect(response.statusCode).toBe(500);
  expect(end.mock.calls[0]?.[0]).toContain('The line broke.');
});

test.each(['//[', 'http://[', '//:x'])('what is no address, such as %j, is left to others', async (url) => {
  const { hooks } = authorsForm();
  let handler: Handler | undefined;
  const server = { config: { base: '/' }, middlewares: { use: (given: Handler) => (handler = given) } };
  await (hooks['astro:server:setup'] as unknown as (given: object) => unknown)({ server });
  const [next, end] = [vi.fn(), vi.fn()];
  handler!({ url }, { setHeader: vi.fn(), end }, next);
  await vi.waitFor(() => expect(next).toHaveBeenCalledOnce());
  expect(end).not.toHaveBeenCalled();
});
