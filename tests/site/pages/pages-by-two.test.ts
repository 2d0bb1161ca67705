import type { AstroPrerenderer } from 'astro';
import { expect, test } from 'vitest';
import { byTwo, inOrder } from '../../../src/site/pages/pages-by-two.ts';

type Options = Parameters<AstroPrerenderer['render']>[1];
const lesson = {
  routeData: { route: '/courses/[course]/[lesson]', component: 'lesson.astro', type: 'page' },
} as Options;
const page = (url: string) => new Request(`http://localhost${url}`);

/** Two that make pages, and what each of them was asked for. */
function two(other: (url: string) => string | undefined, takes = 0) {
  const asked = { astro: [] as string[], other: [] as string[] };
  const where = (url: string) => new URL(url).pathname;
  const own: AstroPrerenderer = {
    name: 'own',
    getStaticPaths: async () => [],
    render: async ({ url }) => {
      asked.astro.push(where(url));
      if (url.endsWith('/broken/')) throw new Error('broken');
      await new Promise(setImmediate);
      return new Response(`page ${where(url)}`);
    },
  };
  const both = byTwo(own, async ({ url }) => {
    asked.other.push(where(url));
    await (takes ? new Promise((done) => setTimeout(done, takes)) : new Promise(setImmediate));
    const html = other(where(url));
    return html === undefined ? undefined : new TextEncoder().encode(html);
  });
  const make = async (url: string, options = lesson) => {
    const made = await both.render(page(url), options);
    return made instanceof Response ? made.text() : undefined;
  };
  return { asked, make };
}

const COURSES = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'].flatMap((course) =>
  [1, 2, 3].map((n) => `/sewing/courses/${course}/lesson-${n}/`),
);
const courseOf = (url: string) => url.split('/')[3];

test('two share the pages, a whole course each, and every page is made', async () => {
  const { asked, make } = two((url) => `page ${url}`);
  const all = ['/sewing/', ...COURSES];
  expect(await Promise.all(all.map((url) => make(url)))).toEqual(all.map((url) => `page ${url}`));
  // The first page that the other made was made by both, to be compared.
  const [compared] = asked.other;
  const owns = asked.astro.filter((url) => url !== compared);
  expect([...owns, ...asked.other].toSorted()).toEqual(all.toSorted());
  const [mine, others] = [owns, asked.other].map((urls) => new Set(urls.map(courseOf)));
  expect(mine!.has(courseOf('/sewing/'))).toBe(true);
  expect(others!.size).toBeGreaterThan(1);
  expect([...mine!].filter((course) => others!.has(course))).toEqual([]);
});

test('where the other is slow, Astro makes most pages by itself', async () => {
  const { asked, make } = two((url) => `page ${url}`, 50);
  await Promise.all(COURSES.map((url) => make(url)));
  expect(asked.astro.length).toBeGreaterThan(asked.other.length);
});

test('where the other makes another page, or none, Astro’s is the one that counts', async () => {
  for (const other of [() => 'something else', () => undefined]) {
    const { asked, make } = two(other);
    const made = await Promise.all(COURSES.map((url) => make(url)));
    expect(made).toEqual(COURSES.map((url) => `page ${url}`));
    expect(new Set(asked.astro)).toEqual(new Set(COURSES));
  }
  const { make } = two((url) => (url.endsWith('lesson-3/') ? undefined : `page ${url}`));
  expect(await Promise.all(COURSES.map((url) => make(url)))).toEqual(COURSES.map((url) => `page ${url}`));
});

test('a page that cannot be made fails alone', async () => {
  const { make } = two((url) => `page ${url}`);
  const made = await Promise.allSettled(['/sewing/broken/', ...COURSES].map((url) => make(url)));
  expect(made.map(({ status }) => status)).toEqual(['rejected', ...COURSES.map(() => 'fulfilled')]);
});

test('what is no page, or has to tell more than a page, stays with Astro', async () => {
  const { asked, make } = two((url) => `page ${url}`);
  const file = { routeData: { ...lesson.routeData, type: 'endpoint' } } as Options;
  for (const url of COURSES) await make(url, file);
  for (const url of COURSES) await make(url, { ...lesson, collectMetadata: true });
  expect(asked.other).toEqual([]);
});

test('style sheets keep their order however often they are sorted', () => {
  const sheet = (src: string, order: number, depth: number) => ({
    ...{ order, depth },
    sheet: { type: 'external' as const, src },
  });
  const sheets = [
    sheet('f', -1, -1),
    sheet('e', 2, 0),
    sheet('b', 1, 1),
    sheet('c', 1, 1),
    sheet('a', 1, 2),
    sheet('d', 1, 0),
  ];
  const order = () => sheets.map(({ sheet }) => sheet.src).join('');
  inOrder(sheets);
  expect(order()).toBe('abcdef');
  inOrder(sheets);
  expect(order()).toBe('abcdef');
});
