/** The words an author may use in a lesson, and what shows each: `<Content components={words} />`. */
import AllowanceStudy from './AllowanceStudy.astro';
import AskChoice from './AskChoice.astro';
import AskEdge from './AskEdge.astro';
import AskFold from './AskFold.astro';
import AskOrder from './AskOrder.astro';
import AskPairs from './AskPairs.astro';
import AskSide from './AskSide.astro';
import AskSize from './AskSize.astro';
import Caution from './Caution.astro';
import CutList from './CutList.astro';
import DriftStudy from './DriftStudy.astro';
import LayerStudy from './LayerStudy.astro';
import LayoutStudy from './LayoutStudy.astro';
import MakeUp from './MakeUp.astro';
import MaterialsList from './MaterialsList.astro';
import MyPiece from './MyPiece.astro';
import Piece from './Piece.astro';
import PleatStudy from './PleatStudy.astro';
import Practice from './Practice.astro';
import Predict from './Predict.astro';
import SeamStudy from './SeamStudy.astro';
import ShoppingList from './ShoppingList.astro';
import Size from './Size.astro';
import Step from './Step.astro';
import Tip from './Tip.astro';
import Working from './Working.astro';
import YourSize from './YourSize.astro';

export const words = {
  AllowanceStudy,
  AskChoice,
  AskEdge,
  AskFold,
  AskOrder,
  AskPairs,
  AskSide,
  AskSize,
  Caution,
  CutList,
  DriftStudy,
  LayerStudy,
  LayoutStudy,
  MakeUp,
  MaterialsList,
  MyPiece,
  Piece,
  PleatStudy,
  Practice,
  Predict,
  SeamStudy,
  ShoppingList,
  Size,
  Step,
  Tip,
  Working,
  YourSize,
};
