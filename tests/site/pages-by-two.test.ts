import type { AstroPrerenderer } from 'astro';
import { expect, test } from 'vitest';
import { byTwo, inOrder } from '../../src/site/pages-by-two.ts';

type Options = Parameters<AstroPrerenderer['render']>[1];
const lesson = {
  routeData: { route: '/courses/[course]/[lesson]', component: 'lesson.astro', type: 'page' },
} as Options;
const page = (url: string) => new Request(`http://localhost${url}`);

/** Two that make pages, and what each of them was asked for. */
function two(other: (url: string) => string | undefined) {
  const asked = { astro: [] as string[], other: [] as string[] };
  const where = (url: string) => new URL(url).pathname;
  const own: AstroPrerenderer = {
    name: 'own',
    getStaticPaths: async () => [],
    render: async ({ url }) => {
      asked.astro.push(where(url));
      return new Response(`page ${where(url)}`);
    },
  };
  const both = byTwo(own, async ({ url }) => {
    asked.other.push(where(url));
    const html = other(where(url));
    return html === undefined ? undefined : new TextEncoder().encode(html);
  });
  const make = async (url: string, options = lesson) => {
    const made = await both.render(page(url), options);
    return made instanceof Response ? made.text() : undefined;
  };
  return { asked, make };
}

const COURSES = ['a', 'b', 'c', 'd'].flatMap((course) =>
  [1, 2, 3].map((n) => `/sewing/courses/${course}/lesson-${n}/`),
);

test('two share the pages, a course each in turn, and every page is made', async () => {
  const { asked, make } = two((url) => `page ${url}`);
  for (const url of COURSES) expect(await make(url)).toBe(`page ${url}`);
  const others = COURSES.filter((url) => /courses\/[bd]/.test(url));
  expect(asked.other).toEqual(others);
  // The first page that the other made was made by both, to be compared.
  expect(asked.astro.toSorted()).toEqual(COURSES.filter((url) => !others.slice(1).includes(url)));
});

test('where the other makes another page, or none, Astro’s is the one that counts', async () => {
  for (const other of [() => 'something else', () => undefined]) {
    const { asked, make } = two(other);
    for (const url of COURSES) expect(await make(url)).toBe(`page ${url}`);
    expect(new Set(asked.astro)).toEqual(new Set(COURSES));
  }
  const { make } = two((url) => (url.endsWith('lesson-3/') ? undefined : `page ${url}`));
  for (const url of COURSES) expect(await make(url)).toBe(`page ${url}`);
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
