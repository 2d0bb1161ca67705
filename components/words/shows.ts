/**
 * What words of a lesson show of the making and of the cloth, at the lesson's own size.
 */
import { buyAtOnce, layAtOnce, startOf } from '../compute/cutting.ts';
import { thicknessIn, type Pattern } from '../../src/core/index.ts';
import { drawWhole } from '../compute/draw-step.ts';
import { roundOf } from './layer-study/layers-on-sheet.ts';
import { pack } from './layer-study/packed-places.ts';
import {
  draw,
  drawLayers,
  layersMost,
  play,
  stepOf,
  tellAll,
  tellPlaces,
  tellShowing,
  tellStep,
} from '../compute/telling.ts';

/** By the name of the word: the attributes that decide, and what is shown. */
export const shows = {
  MakeUp: {
    by: [],
    show(pattern: Pattern) {
      const told = tellAll(pattern);
      const layers = told.map(({ id }) => layersMost(pattern, id));
      return { told, layers, scene: told[0] && play(pattern, told[0].id, 0) };
    },
  },
  Step: {
    by: ['id'],
    show: (pattern: Pattern, id: string) => ({ scene: draw(pattern, id), told: tellStep(pattern, id) }),
  },
  LayerStudy: {
    by: ['step'],
    show(pattern: Pattern, id: string) {
      const step = stepOf(pattern, id);
      const drawn = step && drawLayers(step, pattern, thicknessIn(pattern));
      return {
        makes: step?.makes ?? id,
        scene: drawn && { ...drawn.scene, shapes: [...drawn.scene.shapes, roundOf(drawn, 1)] },
        told: pack(tellPlaces(pattern, id)),
      };
    },
  },
  AskSide: {
    by: ['step', 'shows', 'from'],
    show: (pattern: Pattern, step: string, shows: string, from?: string) =>
      tellShowing(pattern, step, from === 'back' ? 'back' : 'front', shows),
  },
  ShoppingList: {
    by: [],
    show: (pattern: Pattern) => buyAtOnce(pattern, { makers: 1, spares: 0 }, { currency: 'EUR' }),
  },
  LayoutStudy: {
    by: ['of'],
    show(pattern: Pattern, of?: string) {
      const start = startOf(pattern, of);
      return start && { start, laid: layAtOnce(pattern, start) };
    },
  },
  /** No word, but on the page of every project: what its steps come to. */
  Made: { by: [], show: (pattern: Pattern) => drawWhole(pattern) },
} as const;

type Word = keyof typeof shows;
type Shown<W extends Word> = ReturnType<(typeof shows)[W]['show']>;
/** The attributes' values, in the order of `by`. */
type Given = readonly (string | undefined)[];

/** A build shows many words on several pages; each is computed once. The live preview computes for every page, since projects change. */
const cache = new Map<string, unknown>();

/** What a word shows; `pattern` is the project at the lesson's own size. */
export function shown<W extends Word>(word: W, project: string, pattern: Pattern, ...given: Given): Shown<W> {
  const show = shows[word].show as (pattern: Pattern, ...given: Given) => Shown<W>;
  if (!import.meta.env.PROD) return show(pattern, ...given);
  const key = JSON.stringify([project, word, ...given]);
  if (!cache.has(key)) cache.set(key, show(pattern, ...given));
  return cache.get(key) as Shown<W>;
}
