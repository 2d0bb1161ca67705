/** The table of a shopping list, in a document. */
import { mount, unmount } from 'svelte';
import { expect, test } from 'vitest';
import ShoppingTable from '../../../components/ui/ShoppingTable.svelte';
import type { PricedList } from '../../../components/compute/cutting-types.ts';

const line = (buy: string) => ({
  key: 'needles',
  label: 'Machine needles',
  material: 'Machine needles',
  buy,
  pieces: [],
  how: [],
});

test('two lines of one label that buy different things both stand there', () => {
  const lines = [line('1 of NM 80 (US 12)'), line('1 of NM 100 (US 16)')];
  const list = { lines, total: 0, perMaker: 0, troubles: [], unpriced: [] } as unknown as PricedList;
  const page = document.createElement('div');
  // Two rows of one key are an error here.
  const table = mount(ShoppingTable, { target: page, props: { caption: 'What to buy', list } });
  expect([...page.querySelectorAll('tbody .buy')].map(({ textContent }) => textContent)).toEqual(
    lines.map(({ buy }) => buy),
  );
  void unmount(table);
});
