/** Playing a recording step by step: where it is, how fast, and whether it stops after each step. */
import { untrack } from 'svelte';
import { clockTime, type Pattern } from '../../../src/core/index.ts';
import { load, pagePath, save } from '../../page/storage.ts';
import { inCaption, lineFor, type SaidLine } from './follow.ts';
import type { Chapter, Correction } from './view.ts';

/** How fast it plays, from the usual speed to half of it. */
const SPEEDS = [1, 0.75, 0.5] as const;
/** So many seconds from the start are not worth remembering. */
const LEAST = 3;
/** In seconds: how long a correction stays beside the player. */
const SHOWN = 10;
/** In seconds: a place is kept as often as this. */
const OFTEN = 5;

type Kept = { at: number; captions: boolean; speed: number };

function asKept(value: unknown): Kept | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const { at, captions, speed } = value as Partial<Kept>;
  if (typeof at !== 'number' || !Number.isFinite(at) || at < 0) return undefined;
  return { at, captions: captions !== false, speed: SPEEDS.find((one) => one === speed) ?? 1 };
}

export class RecordingState {
  readonly #name: string;
  readonly #lines: readonly SaidLine[];
  readonly #chapters: readonly Chapter[];
  readonly #corrections: readonly Correction[];
  #video: HTMLVideoElement | undefined;
  #captions: TextTrack | undefined;
  #steps: TextTrack | undefined;
  /** What each step is called, at the learner’s size. */
  #titles: readonly string[] = $state.raw([]);
  /** Where a step that is watched alone ends. */
  #end: number | undefined;
  #kept = 0;
  /** In seconds. */
  time = $state(0);
  isPlaying = $state(false);
  speed = $state<number>(1);
  oneStep = $state(false);
  /** Why it does not play, in a sentence. */
  trouble = $state('');

  constructor(
    name: string,
    lines: readonly SaidLine[],
    chapters: readonly Chapter[],
    corrections: readonly Correction[],
  ) {
    this.#name = name;
    this.#lines = lines;
    this.#chapters = chapters;
    this.#titles = chapters.map(({ title }) => title);
    this.#corrections = corrections;
  }

  /** Where a browser keeps it; a server has no address. */
  get #key(): string {
    return `watched:${pagePath()}#${this.#name}`;
  }

  /** The line that is said now, or was said last. */
  readonly line: number = $derived.by(() => this.#lines.findLastIndex(({ from }) => from <= this.time));

  /** The step that is shown now; -1 before the first and between two. */
  readonly chapter: number = $derived.by(() =>
    this.#chapters.findLastIndex(({ from, to }) => from <= this.time + 0.01 && this.time < to),
  );

  /** The step that was begun last. */
  readonly #begun: number = $derived.by(() => this.#chapters.findLastIndex(({ from }) => from <= this.time + 0.01));

  /** What is put right at this second. */
  readonly correction: Correction | undefined = $derived.by(() =>
    this.#corrections.findLast(({ at }) => at - 1 <= this.time && this.time < at + SHOWN),
  );

  get hasNext(): boolean {
    return this.#begun < this.#chapters.length - 1;
  }

  /** `{@attach state.watch}` on the player. */
  readonly watch = (video: HTMLVideoElement): (() => void) => {
    this.#video = video;
    const kept = load(this.#key, asKept);
    const stop = new AbortController();
    const hear = (type: string, then: () => void) => video.addEventListener(type, then, { signal: stop.signal });
    this.#captions = video.addTextTrack('captions', 'Captions with your sizes', document.documentElement.lang || 'en');
    this.#captions.mode = kept?.captions === false ? 'hidden' : 'showing';
    this.#steps = video.addTextTrack('chapters', 'Steps', document.documentElement.lang || 'en');
    this.#steps.mode = 'hidden';
    // A player is watched once, and not anew when a step is called by another size.
    untrack(() => this.nameSteps(this.#titles));
    video.textTracks.addEventListener('change', () => this.#keep(), { signal: stop.signal });
    hear('timeupdate', () => this.#move());
    hear('seeking', () => (this.time = video.currentTime));
    hear('play', () => {
      this.isPlaying = true;
      this.trouble = '';
    });
    hear('pause', () => {
      this.isPlaying = false;
      this.#keep();
    });
    hear('ratechange', () => (this.speed = video.playbackRate));
    hear('error', () => (this.trouble = 'The recording could not be fetched. Its words are below.'));
    addEventListener('pagehide', () => this.#keep(), { signal: stop.signal });
    this.time = video.currentTime;
    this.isPlaying = !video.paused;
    if (kept) {
      this.#setSpeed(kept.speed);
      const isUntouched = video.paused && video.currentTime === 0;
      const go = () => kept.at > LEAST && kept.at < video.duration - LEAST && (video.currentTime = kept.at);
      if (isUntouched && video.readyState > 0) go();
      else if (isUntouched) video.addEventListener('loadedmetadata', go, { once: true, signal: stop.signal });
    }
    return () => stop.abort();
  };

  /** Writes the captions anew for a size or an edition; where it is shows at once. */
  writeCaptions(pattern: Pattern): void {
    const track = this.#captions;
    if (!track) return;
    const { mode } = track;
    // A track that is off gives no list of its cues.
    if (mode === 'disabled') track.mode = 'hidden';
    for (const cue of [...(track.cues ?? [])]) track.removeCue(cue);
    for (const line of this.#lines) track.addCue(new VTTCue(line.from, line.to, inCaption(lineFor(line, pattern))));
    if (track.mode !== mode) track.mode = mode;
  }

  /** What each step is called from now on, in the player's list of chapters as well. */
  nameSteps(titles: readonly string[]): void {
    this.#titles = titles;
    for (const cue of [...(this.#steps?.cues ?? [])]) this.#steps?.removeCue(cue);
    for (const [i, { from, to }] of this.#chapters.entries())
      this.#steps?.addCue(new VTTCue(from, to, inCaption(titles[i]!)));
  }

  /** Plays a step from its start. */
  watchStep(index: number): void {
    const chapter = this.#chapters[index];
    if (chapter) this.#playFrom(chapter.from, chapter.to);
  }

  /** Plays from a second on. */
  watchFrom(second: number): void {
    this.#playFrom(second, this.#chapters.findLast(({ from, to }) => from <= second && second < to)?.to);
  }

  again(): void {
    this.watchStep(Math.max(0, this.#begun));
  }

  next(): void {
    if (this.hasNext) this.watchStep(this.#begun + 1);
  }

  /** To the start of this step; right after its start, to the one before. */
  previous(): void {
    const begun = this.#chapters[this.#begun];
    const isAtStart = begun !== undefined && this.time - begun.from < 2;
    this.watchStep(Math.max(0, this.#begun - (isAtStart ? 1 : 0)));
  }

  slower(): void {
    const i = SPEEDS.findIndex((one) => one === this.speed);
    this.#setSpeed(SPEEDS[(i + 1) % SPEEDS.length]!);
    this.#keep();
  }

  playOrPause(): void {
    if (this.isPlaying) this.#video?.pause();
    else void this.#play();
  }

  /** Whether it stops where a step ends. */
  stopAfterStep(stops: boolean): void {
    this.oneStep = stops;
    this.#end = this.#chapters[this.chapter]?.to;
  }

  /** In a sentence for who does not see it. */
  get where(): string {
    const chapter = this.#chapters[this.chapter];
    return chapter
      ? `Step: ${this.#titles[this.chapter]}, from ${clockTime(chapter.from)} to ${clockTime(chapter.to)}`
      : '';
  }

  #playFrom(second: number, end: number | undefined): void {
    if (!this.#video) return;
    this.#end = end;
    this.#video.currentTime = second;
    this.time = second;
    void this.#play();
  }

  async #play(): Promise<void> {
    try {
      await this.#video?.play();
    } catch (cause) {
      // Another press came before it began.
      if (cause instanceof DOMException && cause.name === 'AbortError') return;
      this.trouble = 'The recording does not play here. Its words are below.';
    }
  }

  #setSpeed(speed: number): void {
    this.speed = speed;
    if (this.#video) this.#video.playbackRate = speed;
  }

  #move(): void {
    const video = this.#video!;
    this.time = video.currentTime;
    if (this.oneStep && this.isPlaying && this.#end !== undefined && this.time >= this.#end) {
      video.pause();
      this.#end = undefined;
    } else if (this.oneStep && this.#end === undefined) this.#end = this.#chapters[this.chapter]?.to;
    if (Math.abs(this.time - this.#kept) >= OFTEN) this.#keep();
  }

  #keep(): void {
    const video = this.#video;
    if (!video) return;
    this.#kept = video.currentTime;
    const captions = this.#captions?.mode === 'showing';
    const kept: Kept = { at: Math.floor(video.ended ? 0 : video.currentTime), captions, speed: this.speed };
    save(this.#key, kept.at <= LEAST && captions && kept.speed === 1 ? undefined : kept);
  }
}
