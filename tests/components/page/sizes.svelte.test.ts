/**
 * A learner's own size: typed, moved, shared by address, kept by the browser, and never lost by a bad value.
 *
 * The numbers of the swatch-card folio, worked out by hand: panel width = card width + 2 ease + 2 seam.
 * inch: 4 1/4 + 2 * 1/8 + 2 * 1/4 = 5. metric: 105 + 2 * 3 + 2 * 6 = 123.
 */
import { beforeEach, expect, test, vi } from 'vitest';
import { addressNow } from '../../../components/page/address.ts';
import { editionChoice } from '../../../components/page/edition.svelte.ts';
import type { Learner } from '../../../components/page/learner.svelte.ts';
import { showQuantity, valueOf } from '../../../components/page/quantity.ts';
import { SizeField } from '../../../components/page/size/size-field.svelte.ts';
import { learner, newPage, plain, visit } from '../lesson.ts';

beforeEach(() => newPage());

/** What the page shows for a sum, once it has followed. */
function shown(mine: Learner, of: string): string {
  dispatchEvent(new Event('beforeprint'));
  return plain(showQuantity(valueOf(of, mine.settledPattern), mine.settledPattern));
}

const width = (mine: Learner) => new SizeField(mine, 'card width');

function type(field: SizeField, text: string): void {
  field.type(text);
  field.settle();
}

test('a typed size is taken, in either unit, and the whole page follows', () => {
  const mine = learner();
  const field = width(mine);
  field.type('4 3/4');
  expect(shown(mine, 'panel width')).toBe('5¾ in');
  type(field, '127 mm');
  expect(field.text).toBe('5 in');
  expect(shown(mine, 'panel width')).toBe('6 in');
  expect(addressNow()).toContain('card-width=5+in');
});

test.each([
  { typed: '', says: /Write a length/ },
  { typed: 'as wide as my hand', says: /is not a length/ },
  { typed: '99999999999999999999', says: /more than 100 m/ },
  { typed: '<script>document.title = "taken"</script>', says: /is not a length/ },
  { typed: '-4', says: /less than nothing/ },
  { typed: '9 in', says: /can be from 3 in to 6 in/ },
  { typed: '4 1/16', says: /goes in steps of ⅛ in/ },
])('typing “$typed” is answered kindly, and nothing is lost', ({ typed, says }) => {
  const mine = learner();
  const field = width(mine);
  field.type(typed);
  // Half a size is not a mistake: nothing is said before the field is left.
  expect(field.trouble).toBeUndefined();
  field.settle();
  expect(plain(field.trouble)).toMatch(says);
  expect(field.text).toBe(typed);
  expect(shown(mine, 'panel width')).toBe('5¼ in');
});

test('a size that cannot be taken comes with the nearest that can', () => {
  const mine = learner();
  const field = width(mine);
  type(field, '9 in');
  expect(field.nearest?.text).toBe('6 in');
  field.move(field.nearest!.value);
  expect(field.text).toBe('6 in');
  expect(shown(mine, 'panel width')).toBe('7 in');
});

test('the edition changes every number, and goes on with the next page', () => {
  const mine = learner();
  expect(shown(mine, 'panel width')).toBe('5¼ in');
  editionChoice.choose('metric');
  expect(shown(mine, 'panel width')).toBe('131 mm');
  expect(width(mine).text).toBe('105 mm');
  expect(addressNow()).toContain('edition=metric');
  expect(localStorage.getItem('course-kit:edition')).toBe('"metric"');
});

test('the address carries a size to somebody else', () => {
  const mine = learner('metric');
  type(width(mine), '110');
  const address = new URL(addressNow());
  expect(address.search).toContain('card-width=110+mm');
  newPage(address.search);
  // 110 + 2 * 3 + 2 * 10
  expect(shown(learner('metric'), 'panel width')).toBe('136 mm');
});

test('the size is kept for the next lesson and the next visit, until it is put back', () => {
  type(width(learner()), '5 in');
  addressNow();
  visit();
  const again = learner();
  expect(shown(again, 'panel width')).toBe('6 in');
  again.reset();
  expect(shown(again, 'panel width')).toBe('5¼ in');
  expect(width(again).text).toBe('4 1/4 in');
  expect(addressNow()).not.toContain('card-width');
  visit();
  expect(shown(learner(), 'panel width')).toBe('5¼ in');
});

test('an option takes its pieces out, stands in the address, and is kept', () => {
  const mine = learner();
  expect(Object.keys(mine.settledPattern.pieces)).toContain('flap');
  mine.choose('flap', false);
  expect(Object.keys(mine.settledPattern.pieces)).not.toContain('flap');
  expect(addressNow()).toContain('flap=no');
  visit();
  expect(Object.keys(learner().settledPattern.pieces)).not.toContain('flap');
});

test('an address with nonsense changes nothing and says so', () => {
  newPage('?edition=furlong&card-width=<b>wide</b>&ease=99+m&pockets=1e9&flap=maybe&nobody=7');
  const mine = learner();
  expect(shown(mine, 'panel width')).toBe('5¼ in');
  expect(shown(mine, 'ease')).toBe('⅛ in');
  expect(mine.refused.map(plain)).toEqual([
    'The address gives no size that can be read for Width of your cards. The lesson’s size is kept.',
    expect.stringMatching(/^Ease at each side of a card can be from/),
    expect.stringMatching(/^The address gives no size that can be read for Number of pockets/),
    'The address says neither yes nor no for “With the flap and the snap”.',
  ]);
});

test.each(['{', 'null', '[]', '{"values":{"card width":{"value":1e99,"edition":"inch"}},"options":7}', '"x"'])(
  'storage that holds %s is as good as empty',
  (rubbish) => {
    for (const key of ['size:demo', 'edition', 'theme', 'done:x']) localStorage.setItem(`course-kit:${key}`, rubbish);
    const mine = learner();
    expect(width(mine).text).toBe('4 1/4 in');
    width(mine).type('5 in');
    expect(shown(mine, 'panel width')).toBe('6 in');
    expect(mine.refused).toEqual([]);
  },
);

test.each([
  ['full', 'setItem', new DOMException('no room', 'QuotaExceededError')],
  ['forbidden', 'getItem', new DOMException('forbidden', 'SecurityError')],
] as const)('storage that is %s is said once, and the page goes on', async (trouble, method, cause) => {
  vi.resetModules();
  const { onStorageTrouble: onKeepTrouble } = await import('../../../components/page/storage.ts');
  const { addressNow } = await import('../../../components/page/address.ts');
  const { learner } = await import('../lesson.ts');
  const heard: string[] = [];
  onKeepTrouble((found) => heard.push(found));
  const spy = vi.spyOn(Storage.prototype, method).mockImplementation(() => {
    throw cause;
  });
  try {
    const mine = learner();
    width(mine).type('5 in');
    width(mine).type('5 1/8 in');
    addressNow();
    dispatchEvent(new Event('beforeprint'));
    expect(width(mine).text).toBe('5 1/8 in');
    expect(heard).toEqual([trouble]);
  } finally {
    spy.mockRestore();
  }
});
