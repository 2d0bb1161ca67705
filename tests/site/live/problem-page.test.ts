import { expect, test, vi } from 'vitest';
import { onRequest } from '../../../src/site/live/problem-page.ts';

vi.mock('../../../src/site/pages/index.ts', () => ({
  getSite: () => Promise.resolve({ language: 'en', spelling: 'british' }),
  getCourses: () => Promise.resolve([]),
  pageUrl: (url: string) => url,
}));

const asked = (address: string, response: Response) => {
  const context = { url: new URL(address, 'http://localhost') } as Parameters<typeof onRequest>[0];
  return onRequest(context, () => Promise.resolve(response)) as Promise<Response>;
};

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
  vi.doMock('virtual:content-mistakes', () => ({ default: false }));
  await expect(asked('/', new Response(torn, html))).rejects.toThrow('A word failed.');
});
