import { describe, expect, it } from 'vitest';
import { closest } from '../../../src/core/measure/index.ts';

const measures = [
  'ease',
  'seam',
  'packet width',
  'panel width',
  'pocket strip length',
  'top-stitch',
  'fold 1',
  'fold 2',
];

describe('closest', () => {
  it.each([
    ['packet widht', 'packet width'], // neighbours exchanged
    ['packetwidth', 'packet width'], // blank left out
    ['Packet Width', 'packet width'], // capitals
    ['packet_width', 'packet width'],
    ['paket width', 'packet width'],
    ['penel width', 'panel width'],
    ['eas', 'ease'],
    ['sease', 'ease'],
    ['seem', 'seam'],
    ['top stitch', 'top-stitch'],
    ['fold1', 'fold 1'],
    ['fold 3', 'fold 1'], // equally near: the first one known
    ['strip', 'pocket strip length'], // the only one with that word
    ['width packet', 'packet width'],
  ])('%j means %j', (word, meant) => {
    expect(closest(word, measures)).toBe(meant);
  });

  it.each(['elbow', 'width', '', 'x', 'to', 'interfacing'])('%j is near nothing, or near several', (word) => {
    expect(closest(word, measures)).toBeUndefined();
  });

  it('prefers the same first letter among equally near words', () => {
    expect(closest('cn', ['in', 'cm'])).toBe('cm');
  });

  it('takes any list, also one that can be gone through only once', () => {
    expect(closest('eese', new Set(measures).values())).toBe('ease');
    expect(closest('ease', [])).toBeUndefined();
  });

  it('is not held up by a very long word', () => {
    const began = performance.now();
    expect(closest('a'.repeat(1_000_000), measures)).toBeUndefined();
    expect(performance.now() - began).toBeLessThan(1000);
  });
});
