/** The words an author may use in a lesson, and what shows each: `<Content components={words} />`. */
import AllowanceStudy from './AllowanceStudy.astro';
import AskSize from './AskSize.astro';
import Caution from './Caution.astro';
import CutList from './CutList.astro';
import DriftStudy from './DriftStudy.astro';
import LayerStudy from './LayerStudy.astro';
import MakeUp from './MakeUp.astro';
import MaterialsList from './MaterialsList.astro';
import Piece from './Piece.astro';
import PleatStudy from './PleatStudy.astro';
import SeamStudy from './SeamStudy.astro';
import Size from './Size.astro';
import Step from './Step.astro';
import Tip from './Tip.astro';
import Working from './Working.astro';
import YourSize from './YourSize.astro';

export const words = {
  AllowanceStudy,
  AskSize,
  Caution,
  CutList,
  DriftStudy,
  LayerStudy,
  MakeUp,
  MaterialsList,
  Piece,
  PleatStudy,
  SeamStudy,
  Size,
  Step,
  Tip,
  Working,
  YourSize,
};
