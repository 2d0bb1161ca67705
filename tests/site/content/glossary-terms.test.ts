import { describe, expect, test } from 'vitest';
import { termId, termsIn } from '../../../src/site/content/glossary-terms.ts';

const GLOSSARY = ['allowance', 'baste', 'ease', 'facing', 'pleat', 'raw edge', 'right side', 'edge'];
const found = (text: string) => termsIn(text, GLOSSARY).map(({ start, end }) => text.slice(start, end));

// English forms, from memory.
describe('terms in a text', () => {
  test.each([
    ['Baste both raw edges.', ['Baste', 'raw edges']],
    ['Basting holds the pleats, and pleated cloth takes more.', ['Basting', 'pleats', 'pleated']],
    ['One seam allowance, right side up.', ['allowance', 'right side']],
    ['A raw\nedge', ['raw\nedge']],
    ['The facing lies behind; back the pocket with a long facing.', ['facing', 'facing']],
    ['Right sides facing, and the cover faces the cards.', ['Right sides']],
    ['Please, with ease: a knife-pleat is upleated.', ['ease']],
    ['', []],
  ])('%s', (text, words) => expect(found(text)).toEqual(words));

  test('none overlap, and each stands where it says', () => {
    const text = 'the raw edge and the edge';
    expect(termsIn(text, GLOSSARY)).toEqual([
      { term: 'raw edge', start: 4, end: 12 },
      { term: 'edge', start: 21, end: 25 },
    ]);
  });

  test('an id is fit for an attribute', () =>
    expect(termId('Pli d’ourlet (double)')).toBe('term-pli-d-ourlet-double-'));
});
