import { isPleated } from '../drawing/folding.ts';
import { makeUp } from '../project/steps/make-up.ts';
import { foldGauge } from './gauge.ts';
import { slug } from './handout.ts';
import { cuttingList, materialsSheet } from './lists.ts';
import { stepSheet } from './step-sheet.ts';
import { templates, templatesOfSizes } from './templates.ts';
import type { Pattern } from '../project/pattern.ts';
import type { Handout, HandoutSetting } from './handout.ts';
import type { StepWords } from './step-sheet.ts';

/** A document that can be made: its file's name, what it is called, and how to make it. */
export type ProjectDocument = {
  readonly name: string;
  readonly title: string;
  make: (setting: HandoutSetting) => Handout;
};

/**
 * The documents of a project at the size of its pattern; the step sheet only where its file has steps. Nothing is
 * worked out before a document is made: the steps are made up for the step sheet alone.
 */
export function projectDocuments(pattern: Pattern, words: StepWords): ProjectDocument[] {
  return [
    { name: 'templates', title: 'Templates at true scale', make: (setting) => templates(pattern, setting) },
    ...(pattern.sizes && pattern.sizes.of.length > 1
      ? [
          {
            name: 'templates-all-sizes',
            title: 'Templates in all sizes, nested',
            make: (setting: HandoutSetting) => templatesOfSizes(pattern, setting),
          },
        ]
      : []),
    ...Object.values(pattern.pieces)
      .filter(isPleated)
      .map((piece): ProjectDocument => ({
        name: `fold-gauge-${slug(piece.name)}`,
        title: `Fold gauge: ${piece.label}`,
        make: (setting) => foldGauge(piece, pattern, setting),
      })),
    { name: 'cutting-list', title: 'Cutting list', make: (setting) => cuttingList(pattern, setting) },
    { name: 'materials-list', title: 'Materials list', make: (setting) => materialsSheet(pattern, setting) },
    ...(pattern.making === undefined
      ? []
      : [
          {
            name: 'step-sheet',
            title: 'Step by step',
            make: (setting: HandoutSetting) => stepSheet(makeUp(pattern), pattern, words, setting),
          },
        ]),
  ];
}
