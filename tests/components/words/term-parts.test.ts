import { expect, test } from 'vitest';
import { termParts } from '../../../components/ui/term-parts.ts';
import { termsByWords } from '../../../src/site/content/glossary-terms.ts';

const TERMS = ['hem', 'pleat', 'raw edge', 'seam allowance', 'allowance'];
const parts = (text: string) => termParts(text, termsByWords([text], TERMS));

test('the first use of a term can be asked, and the words stay as they are', () => {
  const text = 'Press the pleats, then another pleat, inside the seam allowance.';
  expect(parts(text)).toEqual([
    { text: 'Press the ' },
    { text: 'pleats', term: 'term-pleat' },
    { text: ', then another pleat, inside the ' },
    { text: 'seam allowance', term: 'term-seam-allowance' },
    { text: '.' },
  ]);
  expect(
    parts(text)
      .map((part) => part.text)
      .join(''),
  ).toBe(text);
});

test('inside of another word a term is none', () => {
  expect(parts('Turn them over: the hem lies below.')).toEqual([
    { text: 'Turn them over: the ' },
    { text: 'hem', term: 'term-hem' },
    { text: ' lies below.' },
  ]);
  expect(parts('')).toEqual([]);
});

test('at another size, where a size in the text is another, the same words are found', () => {
  const terms = termsByWords(['Fold 12 mm of the raw edge.'], TERMS);
  expect(termParts('Fold ½ in of the raw edge.', terms)[1]).toEqual({ text: 'raw edge', term: 'term-raw-edge' });
});
