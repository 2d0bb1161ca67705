/** What the browser kept of a class, as far as it can still be taken. */
import { beforeEach, expect, test } from 'vitest';
import { ClassOptions } from '../../../components/class/class-options.svelte.ts';

const start = { makers: 6, spares: 1, machines: 3, irons: 1, sessions: [90], begins: [], prices: {}, lessons: [] };

beforeEach(() => localStorage.clear());

test('makers of a size that is gone are not counted, and nothing of them is left to clear', () => {
  localStorage.setItem('course-kit:class:skirt', JSON.stringify({ sizes: { gone: 3 } }));
  expect(new ClassOptions(start, 'class:skirt', ['small', 'large']).now.sizes).toBeUndefined();
  expect(new ClassOptions(start, 'class:skirt').now.sizes).toBeUndefined();
  localStorage.setItem('course-kit:class:skirt', JSON.stringify({ sizes: { gone: 3, small: 2 } }));
  expect(new ClassOptions(start, 'class:skirt', ['small', 'large']).now.sizes).toEqual({ small: 2 });
});
