import type { Box } from '../geometry/readings.ts';
import type { TextShape } from './scene.ts';

/**
 * How wide Inter sets each character, in thousandths of the type size: the wider of its regular and semibold weights,
 * with tabular figures, rounded up. Read from the font's own advance widths; tests/core/drawing/lettering.test.ts
 * holds the table against the font shaped by a text engine. No browser is asked, so that drawings can be laid out
 * anywhere and come out the same.
 */
const widths = new Map<string, number>(
  (
    [
      [185, '\u2009\u202f'],
      [205, '⁄'],
      [265, 'ijlłı′'],
      [280, 'I ,.:;\u00a0'],
      [295, '‘’'],
      [330, "'!·"],
      [360, '|t`'],
      [380, '/\\'],
      [400, 'r()[]{}f'],
      [460, '°'],
      [485, '^_'],
      [515, '″“”–'],
      [545, '?"'],
      [570, 'Lzs'],
      [595, 'eFyvcJakx'],
      [630, 'gbdpqđhunoøE'],
      [665, '0123456789&TBRZ$S*+-<=>~×÷≈≤≥P#ß'],
      [705, 'K'],
      [740, 'CAVDXY'],
      [775, 'QONGHU'],
      [840, 'w¼'],
      [885, '↑↓½⅞'],
      [925, 'Mæ¾m⅓⅛'],
      [975, '⅝⅜…→'],
      [1025, 'W%@—œ⅔'],
    ] as const
  ).flatMap(([width, characters]) => [...characters].map((character) => [character, width] as const)),
);

/** Figures above and below a fraction's slash are small. */
const SMALL_FIGURE = 400;

/** Room for an accent. */
const ACCENT = 340;

/** A character the table lacks is taken to be as wide as the widest letter. */
const UNKNOWN = 1025;

/**
 * How much room a line of lettering takes, in mm; never less than it really does.
 *
 * @example
 * letteringWidth('114 mm', 3.2).toFixed(1) // => '13.2'
 * letteringWidth('⅝', 10) // => 9.75
 */
export function letteringWidth(text: string, size: number): number {
  let width = measured.get(text);
  if (width === undefined) {
    if (measured.size > MANY) measured.clear();
    measured.set(text, (width = widthOfAll(text)));
  }
  return (width / 1000) * size;
}

/** Widths in thousandths of the type size: drawings say the same words again and again. */
const measured = new Map<string, number>();
const MANY = 4000;

function widthOfAll(text: string): number {
  const inFraction = text.includes('⁄') ? figuresOfFractions(text) : undefined;
  let sum = 0;
  let index = 0;
  for (const letter of text) {
    sum += inFraction?.has(index) ? SMALL_FIGURE : widthOf(letter);
    index += letter.length;
  }
  return sum;
}

/** Where the figures above and below the slash of a fraction stand. */
function figuresOfFractions(text: string): Set<number> {
  const found = new Set<number>();
  for (const { index, 0: fraction } of text.matchAll(/\d+⁄\d+/g)) {
    for (let i = 0; i < fraction.length; i++) if (fraction[i] !== '⁄') found.add(index + i);
  }
  return found;
}

function widthOf(letter: string): number {
  const known = widths.get(letter);
  if (known !== undefined) return known;
  // An accent sits over its letter and takes no room of its own, but on the narrowest it stands out at both sides.
  const plain = letter.normalize('NFD')[0] ?? letter;
  if (plain === letter) return /\p{Mn}/u.test(letter) ? 0 : UNKNOWN;
  return Math.max(ACCENT, widths.get(plain) ?? UNKNOWN);
}

/** How far lettering reaches above and below its baseline, as shares of the type size (capitals, figures, tails). */
export const ABOVE = 0.76;
export const BELOW = 0.22;

/** From the baseline up to the middle of the figures. */
export const MIDDLE = 0.36;

/** The box that a line of lettering fills on the sheet. */
export function letteringBox(shape: TextShape): Box {
  const width = letteringWidth(shape.text, shape.size);
  const share = { start: 0, middle: 0.5, end: 1 }[shape.anchor];
  return {
    x: shape.x - share * width,
    y: shape.y - ABOVE * shape.size,
    width,
    height: (ABOVE + BELOW) * shape.size,
  };
}

/**
 * Breaks a text into lines no wider than `width` mm, between words; a word wider than that is broken where it must be.
 *
 * @example
 * wrap('Cut two of lining', 3.2, 20) // => ['Cut two of', 'lining']
 */
export function wrap(text: string, size: number, width: number): string[] {
  const blank = letteringWidth(' ', size);
  const lines: string[] = [];
  let line = '';
  let reached = 0;
  for (const word of text.split(' ').flatMap((word) => pieces(word, size, width))) {
    const wide = letteringWidth(word, size);
    if (line !== '' && reached + blank + wide > width) {
      lines.push(line);
      line = '';
    }
    [line, reached] = line === '' ? [word, wide] : [`${line} ${word}`, reached + blank + wide];
  }
  return line === '' ? lines : [...lines, line];
}

/** A word in parts that each fit the width; the word itself when it fits. */
function pieces(word: string, size: number, width: number): string[] {
  if (word === '' || letteringWidth(word, size) <= width) return word === '' ? [] : [word];
  const parts: string[] = [];
  let part = '';
  for (const letter of word) {
    if (part !== '' && letteringWidth(part + letter, size) > width) {
      parts.push(part);
      part = '';
    }
    part += letter;
  }
  return [...parts, part];
}
