/** Where a learner was: kept for each course, offered on its page and on the home page, and nothing else becomes a link. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { offerToGoOn, placeIn, rememberPlace } from '../../../components/page/place.ts';
import { newPage } from '../lesson.ts';

beforeEach(() => {
  newPage();
  vi.useFakeTimers({ toFake: ['Date'], now: new Date(2026, 2, 1, 10) });
});
afterEach(() => vi.useRealTimers());
const later = () => vi.setSystemTime(Date.now() + 120_000);

const offer = (rest: string): HTMLAnchorElement | undefined => {
  document.body.innerHTML = `<p data-go-on hidden>Go on: <a href="/"></a></p>${rest}`;
  offerToGoOn();
  const shown = document.querySelector<HTMLElement>('[data-go-on]')!;
  return shown.hidden ? undefined : shown.querySelector('a')!;
};
const home = (end = '') =>
  ['pleats', 'bags'].map((id) => `<a href="/courses/${id}/${end}" data-course="courses/${id}/">${id}</a>`).join('');

test('nobody who was nowhere is sent anywhere', () => {
  expect(offer(home())).toBeUndefined();
});

test('the home page leads to the course where one was last, also where pages are files', () => {
  rememberPlace('courses/pleats/fold/', { section: 'press', words: 'Press it' });
  later();
  rememberPlace('courses/bags/size/', { section: 'sums', words: '' });
  expect(offer(home())).toMatchObject({ pathname: '/courses/bags/size/', hash: '#sums', textContent: 'bags' });
  later();
  rememberPlace('courses/pleats/fold/', { section: 'ruler', words: 'By the ruler' });
  expect(offer(home())).toMatchObject({ pathname: '/courses/pleats/fold/', textContent: 'pleats: By the ruler' });
  expect(offer(home('index.html'))?.pathname).toBe('/courses/pleats/fold/index.html');
  // Back at a place where one was before.
  later();
  rememberPlace('courses/bags/size/', { section: 'sums', words: '' });
  expect(offer(home())?.pathname).toBe('/courses/bags/size/');
});

test('a size in the title of a course goes on following the reader', () => {
  rememberPlace('courses/pleats/fold/', { section: 'press', words: 'Press it' });
  const link = offer(
    '<a href="/courses/pleats/" data-course="courses/pleats/">A bag of <span data-size="width">7 in</span> \n</a>',
  );
  expect(link).toMatchObject({ textContent: 'A bag of 7 in: Press it' });
  expect(link?.querySelector('[data-size="width"]')).not.toBeNull();
});

test('the page of a course names the lesson, and offers none that is gone', () => {
  rememberPlace('courses/pleats/fold/', { section: 'press', words: 'Press it' });
  const list = (id: string) =>
    `<a href="/courses/pleats/" data-course="courses/pleats/"></a><a href="/courses/pleats/${id}/" data-lesson="${id}">Fold the strip</a>`;
  expect(offer(list('fold'))).toMatchObject({ hash: '#press', textContent: 'Fold the strip: Press it' });
  expect(offer(list('other'))).toBeUndefined();
});

test('what was put into the storage by hand is no link', () => {
  for (const lesson of ['//elsewhere.example', '../../..', 'javascript:alert(1)', 7]) {
    localStorage.setItem('course-kit:place:/courses/pleats/', JSON.stringify({ lesson, section: 'a', when: 1 }));
    expect(placeIn('courses/pleats/')).toBeUndefined();
  }
});
