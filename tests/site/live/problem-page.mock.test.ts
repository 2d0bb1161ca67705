import { afterEach, expect, test, vi } from 'vitest';
import { onRequest } from '../../../src/site/live/problem-page.ts';

vi.mock('../../../src/site/pages/index.ts', () => ({
  getSite: () => ({ language: 'en', spelling: 'british' }),
  getCourse: () => undefined,
  pageUrl: (url: string) => url,
}));

afterEach(() => vi.resetModules());

const asked = (address: string, response: Response | Error) => {
  const context = { url: new URL(address, 'http://localhost') } as Parameters<typeof onRequest>[0];
  const next = () => (response instanceof Response ? Promise.resolve(response) : Promise.reject(response));
  return onRequest(context, next) as Promise<Response>;
};

const mistakes = (found: boolean | undefined) => vi.doMock('virtual:content-mistakes', () => ({ default: found }));

/** Bytes that are no text in UTF-8; the first are those of every JPEG (ITU-T T.81, SOI and the marker after it). */
const PICTURE = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0x00, 0x80, 0xfe, 0xff]);

test.each([
  ['/_image/?href=%2Ffold.jpg&w=640', 'image/jpeg'],
  ['/courses/pleats/fold.jpg', 'image/jpeg'],
  ['/courses/pleats/recording.mp4/', 'video/mp4'],
  ['/courses/pleats/voice/', ''],
])('what %s answers is handed on byte for byte', async (address, type) => {
  const answer = await asked(address, new Response(PICTURE, { headers: type ? { 'content-type': type } : {} }));
  expect(new Uint8Array(await answer.arrayBuffer())).toEqual(PICTURE);
  expect(answer.headers.get('content-type')).toBe(type || null);
});

test('a page is read to its end, so that what fails in it is told', async () => {
  const html = { headers: { 'content-type': 'text/html; charset=utf-8' } };
  expect(await (await asked('/', new Response('<p>ä</p>', html))).text()).toBe('<p>ä</p>');
  const torn = new ReadableStream({ pull: (to) => to.error(new Error('A word failed.')) });
  mistakes(false);
  await expect(asked('/', new Response(torn, html))).rejects.toThrow('A word failed.');
});

const missing = () => new Response('<p>404</p>', { status: 404, headers: { 'content-type': 'text/html' } });

test.each([
  [true, 'This page waits for a mend', 'listed below'],
  [undefined, 'This page waits for the check', 'still being checked'],
])('a page that fails says why as far as it is known: mistakes %s', async (found, title, why) => {
  mistakes(found);
  for (const failed of [new Error('A word failed.'), missing()]) {
    const answer = await asked('/courses/pleats/', failed);
    expect(answer.status).toBe(503);
    const text = await answer.text();
    expect(text).toContain(`<h1>${title}</h1>`);
    expect(text).toContain(why);
  }
});

test('a page that is not there is told as such where no mistake can be the reason', async () => {
  mistakes(false);
  const answer = await asked('/courses/nowhere/', missing());
  expect(answer.status).toBe(404);
  expect(await answer.text()).toBe('<p>404</p>');
});
