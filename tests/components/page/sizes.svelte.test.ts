/**
 * A learner's own size: typed, moved, shared by address, kept by the browser, and never lost by a bad value.
 *
 * The numbers of the swatch-card folio, worked out by hand: panel width = card width + 2 ease + 2 seam.
 * inch: 4 1/4 + 2 * 1/8 + 2 * 1/4 = 5. metric: 105 + 2 * 3 + 2 * 6 = 123.
 */
import { beforeEach, expect, test, vi } from 'vitest';
import { mount, tick, unmount } from 'svelte';
import { addressNow } from '../../../components/page/address.ts';
import { editionChoice } from '../../../components/page/edition.svelte.ts';
import { learnerOf, provideProject, type Learner } from '../../../components/page/learner.svelte.ts';
import SizePanel from '../../../components/page/size/SizePanel.svelte';
import { showQuantity, valueOf } from '../../../components/page/quantity.ts';
import { SizeField } from '../../../components/page/size/size-field.svelte.ts';
import { learner, newPage, plain, visit } from '../lesson.ts';
import { project, shelf } from '../../core/project/files.ts';

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

test('a plain number is typed, moved and shared like a size', () => {
  const skirt = project(`
title: Skirt
measures:
  rail: { in: 60, mm: 1500 }
  fullness: { number: 1.5, between: [1.2, 2.5], step: 0.1, label: Fullness }
  cloth round: { is: rail * fullness }
pieces:
  skirt: { size: [cloth round, 10] }
`);
  const mine = learner('inch', skirt);
  const field = new SizeField(mine, 'fullness');
  type(field, '2,1');
  expect(field.text).toBe('2.1');
  expect(shown(mine, 'cloth round')).toBe('126 in');
  expect(addressNow()).toContain('fullness=2.1');
  type(field, '2.17');
  expect(field.trouble).toBe('Fullness goes in steps of 0.1 from 1.2.');
  expect(field.nearest).toEqual({ text: '2.2', value: expect.closeTo(2.2, 9) as number });
  type(field, 'full');
  expect(field.trouble).toBe('Write a number, such as 1.5.');
  visit('?fullness=2.5&edition=metric');
  expect(shown(learner('metric', skirt), 'cloth round')).toBe('3750 mm');
});

const skirt = () =>
  project(`
title: Skirt
sizes: { default: medium, of: { small: { waist: { in: 26, mm: 660 } }, medium: { waist: { in: 30, mm: 760 } } } }
measures: { waist: { between: { in: [24, 40], mm: [600, 1000] }, step: { in: 1/2, mm: 10 } }, hem: { in: 1, mm: 25, between: { in: [1, 2], mm: [25, 50] } } }
choices: { back: { one of: { plain: {}, zip: { measures: { hem: 2 in } } } } }
pieces: { panel: { size: [2 * waist, 4 * hem] } }
`);

test('a size is chosen, kept and shared; a slider goes on from it, and another size begins anew', () => {
  const mine = learner('inch', skirt());
  mine.chooseSize('small');
  expect(shown(mine, 'panel width')).toBe('52 in');
  expect(mine.set('waist', 27 * 25.4)).toBeUndefined();
  mine.choose('back', 'zip');
  expect(shown(mine, 'panel width')).toBe('54 in');
  expect(addressNow()).toMatch(/size=small&waist=27\+in&back=zip$/u);

  // Another visit, by what the browser kept.
  visit();
  const again = learner('inch', skirt());
  expect(again.settings).toMatchObject({ size: 'small', options: { back: 'zip' }, values: { waist: 27 * 25.4 } });
  // Back to the size's own value.
  again.set('waist', 26 * 25.4);
  expect(again.settings.values).toEqual({});
  again.set('waist', 28 * 25.4);
  again.chooseSize('medium');
  expect(again.settings).toMatchObject({ size: undefined, values: {} });
  expect(shown(again, 'panel width')).toBe('60 in');
  editionChoice.choose('metric');
  again.chooseSize('small');
  expect(shown(again, 'panel width')).toBe('1320 mm');
  again.reset();
  expect(again.changed).toBe(false);
  // What is kept is written once the page has come to rest.
  expect(addressNow()).not.toMatch(/size|waist|back/u);
  visit();
  expect(learner('inch', skirt()).changed).toBe(false);
});

test('what a browser kept of sizes and choices that are gone is passed over', () => {
  localStorage.setItem(
    'course-kit:size:demo',
    JSON.stringify({ values: {}, options: { back: 'buttons' }, size: 'huge' }),
  );
  const mine = learner('inch', skirt());
  expect(mine.changed).toBe(false);
  // What was kept before there were sizes is still taken.
  localStorage.setItem(
    'course-kit:size:demo',
    JSON.stringify({ values: { waist: { value: 28 * 25.4, edition: 'inch' } }, options: {} }),
  );
  expect(learner('inch', skirt()).settings.values).toEqual({ waist: 28 * 25.4 });
});

test('the panel offers few sizes as keys and many in a list, by name, and says what the chosen one is', async () => {
  provideProject({ id: 'panel', file: skirt(), materials: shelf(), edition: 'inch' });
  const panel = document.body.appendChild(document.createElement('div'));
  const shownPanel = mount(SizePanel, { target: panel, props: { project: 'panel' } });
  await tick();
  const mine = learnerOf('panel');
  const groups = [...panel.querySelectorAll('fieldset')];
  expect(
    groups.map((group) => [...group.querySelectorAll('legend, label')].map((one) => plain(one.textContent).trim())),
  ).toEqual([
    ['Size', 'small', 'medium'],
    ['back', 'plain', 'zip'],
  ]);
  panel.querySelector<HTMLInputElement>('input[value="small"]')!.click();
  panel.querySelector<HTMLInputElement>('input[value="zip"]')!.click();
  await tick();
  expect(mine.settings).toMatchObject({ size: 'small', options: { back: 'zip' } });
  expect([...panel.querySelectorAll('label.on')].map((one) => plain(one.textContent).trim())).toEqual(['small', 'zip']);
  mine.reset();
  void unmount(shownPanel);

  const many = skirt();
  many.sizes!.of = Object.fromEntries([1, 2, 3, 4, 5, 6].map((n) => [`size ${n}`, { waist: `${25 + n} in` }]));
  many.sizes!.default = 'size 2';
  provideProject({ id: 'list', file: many, materials: shelf(), edition: 'inch' });
  const long = mount(SizePanel, { target: panel, props: { project: 'list' } });
  await tick();
  const list = panel.querySelector<HTMLSelectElement>('select')!;
  expect([list.value, list.labels[0]?.textContent.includes('Size'), list.options.length]).toEqual(['size 2', true, 6]);
  list.value = 'size 5';
  list.dispatchEvent(new Event('change', { bubbles: true }));
  expect(learnerOf('list').settings.size).toBe('size 5');
  learnerOf('list').reset();
  void unmount(long);
  panel.remove();
});
