export { papers, MARGIN, SAFE, type PaperName } from './paper.ts';
export { slug, type Handout, type Page, type HandoutSetting } from './handout.ts';
export { templates, templatesOfSizes, LARGEST, SMALLEST } from './templates.ts';
export { foldGauge } from './gauge.ts';
export { cuttingList, materialsSheet } from './lists.ts';
export { projectDocuments, type ProjectDocument } from './project-documents.ts';
export { stepSheet, type StepWords } from './step-sheet.ts';
export {
  exercisesFor,
  isOnPaper,
  seedText,
  type PaperQuestion,
  type Exercises,
  type Seed,
  type PaperExercise,
} from './exercises.ts';
export type { PickQuestion } from './picks.ts';
export { wordsAt, worksheet, type LessonOnPaper } from './worksheet.ts';
export { answerKey } from './answer-key.ts';
export { classPlan, type CautionWords, type Plan, type PlannedLesson, type PlannedSession } from './class-plan.ts';
export { pieceSvg } from './svg.ts';
export { tile, tileName, OVERLAP, type Tile, type Tiling } from './tiles.ts';
export { writePdf, type Fonts, type Printed } from './pdf.ts';
export { missingCharacterText, type MissingCharacter } from './missing-characters.ts';
