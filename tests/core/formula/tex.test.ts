import fc from 'fast-check';
import katex from 'katex';
import { describe, expect, it } from 'vitest';
import { slotTexts, texSettings, texText, toTex, toWords, type Edition } from '../../../src/core/index.ts';
import { folio, formula, length, number, quantity, scopeOf } from './read.ts';
import { here, lengths, named, names, plainNumbers, sums } from './random.ts';

const inches = scopeOf(folio, 'inch');

/** The same with every narrow no-break space as ␣, to be seen in the tables below. */
const seen = (text: string) => text.replaceAll('\u202f', '␣');

const entities: Record<string, string> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#x27;': "'" };

/** The text that a reader sees in a piece of KaTeX's HTML. */
const textOf = (html: string) =>
  html.replace(/<[^>]*>/gu, '').replace(/&[#\w]+;/gu, (entity) => entities[entity] ?? entity);

/** The HTML inside each slot, by the slot's number; KaTeX may put the lower half of a fraction first. */
function slotsOf(html: string): string[] {
  const slots: string[] = [];
  for (const opening of html.matchAll(/<span class="enclosing[^"]*" data-slot="(\d+)">/gu)) {
    const start = opening.index + opening[0].length;
    let depth = 1;
    for (const tag of html.slice(start).matchAll(/<(\/?)span[^>]*>/gu)) {
      depth += tag[1] ? -1 : 1;
      if (depth > 0) continue;
      slots[Number(opening[1])] = html.slice(start, start + tag.index);
      break;
    }
  }
  return slots;
}

const render = (tex: string) => katex.renderToString(tex, texSettings);

describe('toTex', () => {
  it.each([
    [
      'packet width + 2 * ease',
      '\\text{packet width} + 2 \\times \\text{ease}',
      '\\text{3¼␣in} + 2 \\times \\text{¼␣in}',
      '\\text{=␣3¾␣in}',
    ],
    ['packet width / 3', '\\dfrac{\\text{packet width}}{3}', '\\dfrac{\\text{3¼␣in}}{3}', '\\text{≈␣1␣1⁄16␣in}'],
    ['3 1/4 * ease', '\\text{3¼} \\times \\text{ease}', '\\text{3¼} \\times \\text{¼␣in}', '\\text{=␣13⁄16␣in}'],
    ['2.5 * ease', '2.5 \\times \\text{ease}', '2.5 \\times \\text{¼␣in}', '\\text{=␣⅝␣in}'],
    ['ease + 6 mm', '\\text{ease} + \\text{¼␣in}', '\\text{¼␣in} + \\text{¼␣in}', '\\text{=␣½␣in}'],
    ['pockets - 1', '\\text{pockets} - 1', '\\text{4} - 1', '\\text{=␣3}'],
    ['ease * ease', '\\text{ease} \\times \\text{ease}', '\\text{¼␣in} \\times \\text{¼␣in}', '\\text{≈␣0.06␣in²}'],
    [
      '(ease + ease) * 2',
      '\\left(\\text{ease} + \\text{ease}\\right) \\times 2',
      '\\left(\\text{¼␣in} + \\text{¼␣in}\\right) \\times 2',
      '\\text{=␣1␣in}',
    ],
    [
      '(packet width - ease) / 2',
      '\\dfrac{\\text{packet width} - \\text{ease}}{2}',
      '\\dfrac{\\text{3¼␣in} - \\text{¼␣in}}{2}',
      '\\text{=␣1½␣in}',
    ],
    [
      'ease - (ease - ease)',
      '\\text{ease} - \\left(\\text{ease} - \\text{ease}\\right)',
      '\\text{¼␣in} - \\left(\\text{¼␣in} - \\text{¼␣in}\\right)',
      '\\text{=␣¼␣in}',
    ],
    [
      '-(ease + ease)',
      '-\\left(\\text{ease} + \\text{ease}\\right)',
      '-\\left(\\text{¼␣in} + \\text{¼␣in}\\right)',
      '\\text{=␣−½␣in}',
    ],
    [
      'ease * -2',
      '\\text{ease} \\times \\left(-2\\right)',
      '\\text{¼␣in} \\times \\left(-2\\right)',
      '\\text{=␣−½␣in}',
    ],
    [
      'min(ease, 1 in)',
      '\\min\\left(\\text{ease}, \\text{1␣in}\\right)',
      '\\min\\left(\\text{¼␣in}, \\text{1␣in}\\right)',
      '\\text{=␣¼␣in}',
    ],
    [
      'round up packet width / 3 to 1/8 in',
      '\\text{round up }\\dfrac{\\text{packet width}}{3}\\text{ to }\\text{⅛␣in}',
      '\\text{round up }\\dfrac{\\text{3¼␣in}}{3}\\text{ to }\\text{⅛␣in}',
      '\\text{=␣1⅛␣in}',
    ],
    [
      'ease + round ease to (ease + ease)',
      '\\text{ease} + \\left(\\text{round }\\text{ease}\\text{ to }\\left(\\text{ease} + \\text{ease}\\right)\\right)',
      '\\text{¼␣in} + \\left(\\text{round }\\text{¼␣in}\\text{ to }\\left(\\text{¼␣in} + \\text{¼␣in}\\right)\\right)',
      '\\text{=␣¾␣in}',
    ],
    // A value below zero has brackets where a sign stands before it.
    ['cut up + ease', '\\text{cut up} + \\text{ease}', '\\text{−⅛␣in} + \\text{¼␣in}', '\\text{=␣⅛␣in}'],
    ['ease - cut up', '\\text{ease} - \\text{cut up}', '\\text{¼␣in} - \\text{(−⅛␣in)}', '\\text{=␣⅜␣in}'],
    ['-cut up', '-\\text{cut up}', '-\\text{(−⅛␣in)}', '\\text{=␣⅛␣in}'],
    // What has no value.
    ['ease + elbow', '\\text{ease} + \\text{elbow}', '\\text{¼␣in} + \\text{?}', '\\text{=␣?}'],
    ['ease + 2', '\\text{ease} + 2', '\\text{¼␣in} + 2', '\\text{=␣?}'],
  ])('%s', (text, named, withNumbers, result) => {
    const lines = toTex(formula(text), inches);
    expect({ names: seen(lines.names), numbers: seen(lines.numbers), result: seen(lines.result) }).toEqual({
      names: named,
      numbers: withNumbers,
      result,
    });
    for (const line of Object.values(lines)) expect(render(line)).toContain('katex');
  });

  it('counts the slots through names, numbers and result', () => {
    const worked = formula('packet width + 2 * 1/4 in');
    const { names, numbers, result } = toTex(worked, { ...inches, slots: true });
    expect(seen(names)).toBe('\\text{packet width} + 2 \\times {\\htmlData{slot=0}{\\text{¼␣in}}}');
    expect(seen(numbers)).toBe('{\\htmlData{slot=1}{\\text{3¼␣in}}} + 2 \\times {\\htmlData{slot=2}{\\text{¼␣in}}}');
    expect(seen(result)).toBe('{\\htmlData{slot=3}{\\text{=␣3¾␣in}}}');
    expect(slotTexts(worked, inches).map(seen)).toEqual(['¼␣in', '3¼␣in', '¼␣in', '=␣3¾␣in']);
    expect(slotTexts(worked, scopeOf({ 'packet width': length(83) }, 'metric')).map(seen)).toEqual([
      '6␣mm',
      '83␣mm',
      '6␣mm',
      '=␣95␣mm',
    ]);
  });

  it('writes quantities as it is told to', () => {
    const scope = { ...inches, format: (of: { value: number }) => `${of.value}"` };
    expect(slotTexts(formula('ease + 1 in'), scope)).toEqual(['25.4″', '6.35″', '25.4″', '=\u202f31.75″']);
  });
});

describe('KaTeX accepts every line and shows exactly its texts', () => {
  const kinds = fc.constantFrom(0, 1, 2);
  const value = fc.oneof(
    fc.integer({ min: -3200, max: 3200 }).map((sixteenths) => (sixteenths / 16) * 25.4),
    fc.double({ min: -1e4, max: 1e4, noNaN: true }),
  );
  const values = fc.array(fc.tuple(value, kinds), { minLength: names.length, maxLength: names.length });
  const edition = fc.constantFrom<Edition>('inch', 'metric');
  const scope = (values: [number, number][], edition: Edition) =>
    scopeOf(
      Object.fromEntries(names.map((name, i) => [name, quantity(values[i]![0], values[i]![1] as 0 | 1 | 2)])),
      edition,
    );
  const sum = sums(fc.oneof(plainNumbers, lengths, named), plainNumbers, 3);

  it('in the slots of the page as it was built', () => {
    fc.assert(
      fc.property(sum, values, edition, (sum, values, edition) => {
        const worked = formula(here(sum), names);
        const within = scope(values, edition);
        const lines = toTex(worked, { ...within, slots: true });
        const slots = slotsOf(render(lines.names) + render(lines.numbers) + render(lines.result));
        expect(slots.map(textOf)).toEqual(slotTexts(worked, within));
        // One run of text in one element, and nothing beside it: nothing is lost when it is replaced.
        for (const inside of slots) {
          expect(inside).toMatch(/^<span class="mord text[ \w-]*"><span class="mord[ \w-]*">[^<]*<\/span><\/span>$/u);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('with slots that fit every other scope, so that the page can be refilled', () => {
    fc.assert(
      fc.property(sum, values, values, edition, edition, (sum, before, after, first, second) => {
        const worked = formula(here(sum), names);
        const built = toTex(worked, { ...scope(before, first), slots: true });
        const anew = toTex(worked, { ...scope(after, second), slots: true });
        const texts = slotTexts(worked, scope(after, second));
        // Refilled by hand, the lines as they were built become the lines that would be built anew.
        const refilled = Object.entries(built).map(([line, tex]) => [
          line,
          tex.replace(
            /(\\htmlData\{slot=(\d+)\}\{\\text\{)[^}]*\}/gu,
            (_, opening: string, slot: number) => `${opening}${texts[slot]}}`,
          ),
        ]);
        expect(Object.fromEntries(refilled)).toEqual(anew);
      }),
      { numRuns: 1000 },
    );
  });

  it.each([
    'seam & ease',
    'half_width #2',
    '50 % of {all}',
    'a~b^c\\d',
    '$5 zip',
    '\\htmlData{slot=0}{x}',
    '<script>alert(1)</script>',
    'Größe der Tasche für Œuvre',
    'ポケット幅',
    'карман',
    '🧵 allowance',
    'a 3 1⁄16 × ½ ≈ −2″',
  ])('also the name %s', (name) => {
    const html = render(toTex(formula(name, [name]), scopeOf({ [name]: number(1) })).names);
    expect(textOf(html).replaceAll('\u00a0', ' ')).toBe(name);
    expect(html).not.toContain('<script');
    expect(texText(name)).toMatch(/^\\text\{/u);
  });

  it('and does nothing that the lines never need', () => {
    expect(() => render('\\unknown')).toThrow();
    expect(() => render('1 + % half a line')).toThrow();
    // What is not trusted is shown as text.
    expect(render('\\href{https://example.org}{x}')).not.toContain('<a');
    expect(render('\\htmlClass{big}{x}')).not.toContain('class="enclosing big"');
  });
});

describe('toWords', () => {
  it.each([
    [
      'packet width + 2 * ease',
      'packet width plus 2 times ease, that is 3 and a quarter inches plus 2 times a quarter of an inch, which makes 3 and 3 quarters inches.',
    ],
    [
      '(packet width - 1/2 in) / 2',
      'open bracket packet width minus half an inch close bracket divided by 2, that is open bracket 3 and a quarter inches minus half an inch close bracket divided by 2, which makes 1 and 3 eighths inches.',
    ],
    [
      '2 * min(ease, 1 in, packet width)',
      '2 times open bracket the smallest of ease, 1 inch and packet width close bracket, that is 2 times open bracket the smallest of a quarter of an inch, 1 inch and 3 and a quarter inches close bracket, which makes half an inch.',
    ],
    [
      'round up packet width / 3 to 1/8 in',
      'round up packet width divided by 3 to an eighth of an inch, that is round up 3 and a quarter inches divided by 3 to an eighth of an inch, which makes 1 and an eighth inches.',
    ],
    ['max(pockets, 5)', 'the largest of pockets and 5, that is the largest of 4 and 5, which makes 5.'],
    [
      'ease - (ease - ease)',
      'ease minus open bracket ease minus ease close bracket, that is a quarter of an inch minus open bracket a quarter of an inch minus a quarter of an inch close bracket, which makes a quarter of an inch.',
    ],
    ['-cut up', 'minus cut up, that is minus minus an eighth of an inch, which makes an eighth of an inch.'],
    [
      'packet width / 7',
      'packet width divided by 7, that is 3 and a quarter inches divided by 7, which makes about 7 sixteenths of an inch.',
    ],
    ['elbow', 'elbow, that is an unknown value, which makes an unknown value.'],
  ])('%s', (text, words) => {
    expect(toWords(formula(text), inches)).toBe(words);
  });

  it('follows the edition', () => {
    expect(toWords(formula('a + 1/4 in'), scopeOf({ a: length(83) }, 'metric'))).toBe(
      'a plus 6 millimetres, that is 83 millimetres plus 6 millimetres, which makes 89 millimetres.',
    );
  });
});
