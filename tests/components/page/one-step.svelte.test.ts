/** What stands behind the steps at hand: the voice, the clock, what is said aloud, and the address. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { clockTime } from '../../../src/core/index.ts';
import { Countdown } from '../../../components/page/one-step/countdown.svelte.ts';
import { hashOf, stepIn } from '../../../components/page/one-step/hash.ts';
import { heldBack, ownWords } from '../../../components/page/one-step/own-words.ts';
import { ownVoice } from '../../../components/page/one-step/read-aloud.svelte.ts';
import { sayAloud } from '../../../components/page/one-step/speech.ts';

describe('the voice', () => {
  const voice = (name: string, lang: string, localService: boolean, more = {}) =>
    ({ name, lang, localService, default: false, voiceURI: name, ...more }) as SpeechSynthesisVoice;

  test('lives on this device and speaks the language of the page, that of its country first', () => {
    const far = voice('far', 'en-GB', false, { default: true });
    const near = voice('near', 'en_US', true);
    const british = voice('british', 'en-GB', true);
    const german = voice('german', 'de-DE', true);
    expect(ownVoice([far, german, near, british], 'en-GB')).toBe(british);
    expect(ownVoice([far, german, near], 'en-GB')).toBe(near);
    expect(ownVoice([far, german], 'en-GB')).toBeUndefined();
    // A browser that does not say where a voice lives has none.
    expect(ownVoice([{ ...near, localService: undefined } as never], 'en')).toBeUndefined();
  });
});

describe('the clock', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  test('counts down by the time of day, also where the device slept', () => {
    const countdown = new Countdown();
    countdown.start(15);
    expect(countdown.left).toBe(15);
    vi.advanceTimersByTime(4000);
    expect(countdown.left).toBe(11);
    vi.setSystemTime(Date.now() + 20_000);
    vi.advanceTimersByTime(200);
    expect(countdown.left).toBeUndefined();
    expect(countdown.isOver).toBe(true);
    countdown.start(2);
    expect(countdown.isOver).toBe(false);
    countdown.stop();
    vi.advanceTimersByTime(5000);
    expect(countdown.isOver).toBe(false);
  });

  test('shows minutes and seconds', () => {
    expect([0, 5, 75, 600].map(clockTime)).toEqual(['0:00', '0:05', '1:15', '10:00']);
  });
});

test.each([
  ['Fold 1¾\u202fin down.', 'Fold 1 and 3 quarters inches down.'],
  ['11⁄16\u202fin wide', '11 sixteenths inches wide'],
  ['9\u202f11⁄16\u202fin', '9 and 11 sixteenths inches'],
  ['5¼\u202fin × 7⅛\u202fin', '5 and 1 quarter inches by 7 and 1 eighth inches'],
  ['≈\u202f12\u202fmm, put in.', 'about 12 millimetres, put in.'],
  ['pin it in 2 places', 'pin it in 2 places'],
])('%s is said as %s', (text, said) => {
  expect(sayAloud(text)).toBe(said);
});

test('the end of an address names a step, whatever its id is made of', () => {
  for (const id of ['pleat', 'step 4', 'a:b', 'ärmel', '50%']) expect(stepIn(hashOf(id))).toBe(id);
  expect(stepIn('#one-step')).toBeUndefined();
  expect(stepIn('#one-step:%E0%A4%A')).toBeUndefined();
});

test('the words of a step are copied with their pictures, and without questions and names', () => {
  document.body.innerHTML = `
    <div class="held" data-held='["width"]'><p class="keeps"><button data-show-held>Show it now</button></p>
    <section data-step="step 4"><div class="own"><astro-slot><p id="x">Fold it.</p>
      <div data-told="should look"><p>All level.</p><img src="/level.jpg" alt="Folds, all level"></div>
      <astro-island><p>How wide is it?</p></astro-island>
    </astro-slot><p>Advice</p></div></section></div>
    <section data-step="other"><div class="own"><p>A note</p></div></section>`;
  const own = ownWords('step 4')!;
  expect(own.tells).toEqual(['should look']);
  expect(own.text).toMatch(/^Fold it\.\s+All level\.$/u);
  expect(own.copy.querySelector('img')?.alt).toBe('Folds, all level');
  expect(own.copy.querySelector('[id], astro-island')).toBeNull();
  // The lesson itself keeps all of it.
  expect(document.querySelector('[data-step="step 4"] astro-island')).not.toBeNull();
  expect(heldBack('step 4')?.textContent).toBe('Show it now');
  expect([ownWords('other'), ownWords('none'), heldBack('other')]).toEqual([undefined, undefined, undefined]);
});
