/** The player of a recording, mounted in a document. Playing itself is the browser's: a stub stands in for it here. */
import { flushSync, mount, unmount } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import Recording from '../../../components/words/recording/Recording.svelte';
import { editionChoice } from '../../../components/page/edition.svelte.ts';
import { learnerOf, provideProject } from '../../../components/page/learner.svelte.ts';
import { folio } from '../../core/project/files.ts';
import { newPage } from '../lesson.ts';

type Cue = { startTime: number; endTime: number; text: string };
let pauses = 0;
let tracks: { kind: string; mode: string; cues: Cue[] }[] = [];

beforeEach(() => {
  newPage();
  tracks = [];
  pauses = 0;
  vi.stubGlobal(
    'VTTCue',
    class {
      startTime: number;
      endTime: number;
      text: string;
      constructor(startTime: number, endTime: number, text: string) {
        this.startTime = startTime;
        this.endTime = endTime;
        this.text = text;
      }
    },
  );
  const { prototype } = HTMLMediaElement;
  vi.spyOn(prototype, 'addTextTrack').mockImplementation((kind) => {
    const cues: Cue[] = [];
    const track = {
      ...{ kind, mode: 'disabled', cues },
      addCue: (cue: Cue) => cues.push(cue),
      removeCue: (cue: Cue) => cues.splice(cues.indexOf(cue), 1),
    };
    tracks.push(track);
    return track as unknown as TextTrack;
  });
  Object.defineProperty(prototype, 'textTracks', { configurable: true, value: new EventTarget() });
  vi.spyOn(prototype, 'play').mockImplementation(function (this: HTMLMediaElement) {
    this.dispatchEvent(new Event('play'));
    return Promise.resolve();
  });
  vi.spyOn(prototype, 'pause').mockImplementation(function (this: HTMLMediaElement) {
    pauses += 1;
    this.dispatchEvent(new Event('pause'));
  });
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const PROJECT = 'recorded-folio';

function shown(says?: string) {
  provideProject({ id: PROJECT, file: folio(), materials: {}, edition: 'inch' });
  const chapter = (step: string, from: number, to: number) => ({ step, title: step, from, to, sure: 1 });
  const { seam } = learnerOf(PROJECT).lesson.measures;
  const component = mount(Recording, {
    target: document.body,
    props: {
      ...{ project: PROJECT, name: 'whole', title: 'Whole', media: { url: 'whole.webm', type: 'video/webm' } },
      ...{ poster: undefined, addressAt: undefined, corrections: [{ at: 12, note: 'The seam is [seam].' }] },
      chapters: [{ ...chapter('fold', 2, 10), ...(says !== undefined && { says }) }, chapter('press', 10, 20)],
      lines: [
        { from: 2, to: 10, text: 'fold <it>' },
        {
          ...{ from: 10, to: 20, text: 'a seam so wide' },
          sizes: [{ start: 2, end: 6, values: [seam!.value], of: ['seam'], edition: 'inch' as const }],
        },
      ],
    },
  });
  flushSync();
  const video = document.querySelector('video')!;
  const press = (name: string) => {
    const button = [...document.querySelectorAll('button')].find(({ textContent }) => textContent.includes(name))!;
    button.click();
    flushSync();
  };
  return { component, video, press };
}

test('steps, the line that is said, a correction at its second, and captions that follow the edition', async () => {
  const { component, video, press } = shown();
  const captions = () => tracks.find(({ kind }) => kind === 'captions')!;
  expect(tracks.find(({ kind }) => kind === 'chapters')?.cues.map(({ text }) => text)).toEqual(['fold', 'press']);
  expect(captions().mode).toBe('showing');
  expect(captions().cues.map(({ text }) => text)).toEqual(['fold &lt;it&gt;', 'a seam so wide']);
  expect(video.currentTime).toBe(0);

  press('press');
  expect(video.currentTime).toBe(10);
  expect(document.querySelector('[aria-current="step"]')?.textContent).toContain('press');
  expect(document.querySelector('.said .now')?.textContent).toContain('a seam so wide');
  video.currentTime = 12;
  video.dispatchEvent(new Event('timeupdate'));
  flushSync();
  expect(document.querySelector('[role="status"]')?.textContent).toMatch(/Put right: The seam is/);

  press('Step back');
  expect(video.currentTime).toBe(10);
  press('Step back');
  expect(video.currentTime).toBe(2);
  press('Next step');
  expect(video.currentTime).toBe(10);
  press('Slower');
  expect(video.playbackRate).toBe(0.75);

  editionChoice.choose('metric');
  await vi.waitFor(() => {
    flushSync();
    expect(captions().cues[1]?.text).toMatch(/^a seam \(yours: .*mm\) so wide$/);
  });
  await unmount(component);
});

test('it stops where a step ends, if that is wished, and remembers where it was', async () => {
  const { component, video, press } = shown();
  const stops = document.querySelector<HTMLInputElement>('input[type="checkbox"]')!;
  stops.click();
  flushSync();
  press('fold');
  video.currentTime = 10.1;
  video.dispatchEvent(new Event('timeupdate'));
  flushSync();
  expect(pauses).toBe(1);
  expect(Object.keys(localStorage).filter((key) => key.includes('watched:'))).toHaveLength(1);
  await unmount(component);
});

test('a step that an author told with a size is called by the size of the edition', async () => {
  const { component } = shown('Fold it at [seam]');
  const called = () => [
    document.querySelector('.chapters li')!.textContent,
    document.querySelector('.said h3')!.textContent,
    tracks.find(({ kind }) => kind === 'chapters')!.cues[0]!.text,
  ];
  editionChoice.choose('inch');
  await vi.waitFor(() => {
    flushSync();
    for (const title of called()) expect(title).toMatch(/Fold it at ⅜.in/u);
  });
  editionChoice.choose('metric');
  await vi.waitFor(() => {
    flushSync();
    for (const title of called()) expect(title).toMatch(/Fold it at 10.mm/u);
  });
  expect(tracks.find(({ kind }) => kind === 'chapters')!.cues).toHaveLength(2);
  await unmount(component);
});
