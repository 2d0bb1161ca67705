/**
 * Where a learner was: the lesson and its section where they last read, answered or ticked, for each course. The course's
 * page and the home page offer to go on there.
 */
import { asRecord, load, pagePath, save } from './storage.ts';

/**
 * `lesson` is its part of the address, `section` the heading's. `words` says the section, where no size stands in it: one
 * would be of yesterday's edition. `when` in ms since 1970.
 */
export type Place = { lesson: string; section: string; words: string; when: number };

/** In ms: the time of one and the same place is kept as often as this. */
const OFTEN = 60_000;

const keyOf = (course: string): string => `place:/${course}`;

/** A part of an address as lessons and headings have it: nothing else becomes a link. */
const isPart = (text: unknown): text is string =>
  typeof text === 'string' && /^[\p{L}\p{M}\p{N}_-]{1,200}$/u.test(text);

/** @param lesson its address from the top of the site, without the first stroke: `courses/pleats/fold/` */
export function rememberPlace(lesson: string, { section, words }: Pick<Place, 'section' | 'words'>): void {
  const [, course, part] = /^(.*\/)([^/]+)\/$/u.exec(lesson) ?? [];
  if (course === undefined || part === undefined) return;
  const before = placeIn(course);
  const isSame = before?.lesson === part && before.section === section;
  if (isSame && Date.now() - before.when < OFTEN) return;
  save(keyOf(course), { lesson: part, section, words, when: Date.now() } satisfies Place);
}

/** @param course its address from the top of the site, without the first stroke: `courses/pleats/` */
export const placeIn = (course: string): Place | undefined =>
  load(keyOf(course), (value) => {
    const { lesson, section, words, when } = asRecord(value) ?? {};
    if (!isPart(lesson) || !isPart(section) || typeof when !== 'number') return undefined;
    return { lesson, section, words: typeof words === 'string' ? words.slice(0, 200) : '', when };
  });

/**
 * Shows the way back to the place in the course where the learner was last. The page has a hidden `[data-go-on]` with a
 * link, and names each of its courses on a link: `data-course="courses/pleats/"`. Where the page lists the lessons
 * (`data-lesson="fold"`), one that is gone is not offered.
 */
export function offerToGoOn(): void {
  const offer = document.querySelector<HTMLElement>('[data-go-on]');
  const link = offer?.querySelector('a');
  if (!offer || !link) return;
  const [last] = [...document.querySelectorAll<HTMLAnchorElement>('a[data-course]')]
    .flatMap((course) => {
      const place = placeIn(course.dataset.course ?? '');
      return place ? [{ course, place }] : [];
    })
    .toSorted((a, b) => b.place.when - a.place.when);
  if (!last) return;
  const { course, place } = last;
  const listed = [...document.querySelectorAll<HTMLAnchorElement>('a[data-lesson]')];
  const lesson = listed.find(({ dataset }) => dataset.lesson === place.lesson);
  if (listed.length > 0 && !lesson) return;
  // A copy for a memory stick names the file of each page.
  const file = course.pathname.endsWith('/index.html') ? 'index.html' : '';
  const address = lesson?.href ?? new URL(`${place.lesson}/${file}`, new URL(pagePath(course.href), course.href)).href;
  link.href = `${address.replace(/#.*$/u, '')}#${place.section}`;
  // A size in a title goes on following the reader's own. Blanks at the end of a title would part it from the colon.
  const name = [...(lesson ?? course).childNodes].map((node) => node.cloneNode(true));
  const end = name.at(-1);
  if (end instanceof Text) end.data = end.data.trimEnd();
  link.replaceChildren(...name, ...(place.words === '' ? [] : [`: ${place.words}`]));
  offer.hidden = false;
}
