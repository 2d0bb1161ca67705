/** How hot an iron is at each setting, and what is said of it. */
import { expect, test } from 'vitest';
import { IRON_DOTS, sayHeat, sayIron } from '../../src/core/steps/heat.ts';

test('one, two and three dots', () => {
  // GINETEX table of care symbols (copy at scribd.com/document/488235107): the sole-plate is no hotter than 110, 150 and
  // 200 °C at one, two and three dots, and one dot goes without steam. The same three figures: care symbols of the set of
  // ISO 3758, as explained by ozdenim.com/blog/post/laundry-symbols.
  expect(IRON_DOTS).toEqual([110, 150, 200]);
  expect(sayIron(110)).toBe('one dot, without steam, no hotter than 110 °C (230 °F)');
  expect(sayIron(150)).toBe('two dots, no hotter than 150 °C (302 °F)');
  expect(sayIron(200)).toBe('three dots, no hotter than 200 °C (392 °F)');
});

test('between two settings, and below all of them', () => {
  // A light non-woven interlining fuses at 125 to 135 °C (interlining maker's note): an iron's dots do not name that.
  expect(sayIron(135)).toBe('between one dot and two, no hotter than 135 °C (275 °F)');
  expect(sayIron(180)).toBe('between two dots and three, no hotter than 180 °C (356 °F)');
  expect(sayIron(60)).toBe('less than one dot, no hotter than 60 °C (140 °F)');
  expect(sayIron(220)).toBe('three dots, no hotter than 220 °C (428 °F)');
});

test('degrees Fahrenheit', () => {
  // By definition of the scale: water freezes at 32 °F and boils at 212 °F.
  expect(sayHeat(0)).toBe('0 °C (32 °F)');
  expect(sayHeat(100)).toBe('100 °C (212 °F)');
});
