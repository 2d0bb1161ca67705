/** The words an author may use in a lesson, and what shows each: `<Content components={words} />`. */
import AllowanceStudy from './allowance-study/AllowanceStudy.astro';
import AskChoice from './ask-choice/AskChoice.astro';
import AskEdge from './ask-edge/AskEdge.astro';
import AskFold from './ask-fold/AskFold.astro';
import AskOrder from './ask-order/AskOrder.astro';
import AskPairs from './ask-pairs/AskPairs.astro';
import AskSide from './ask-side/AskSide.astro';
import AskSize from './ask-size/AskSize.astro';
import Caution from './caution/Caution.astro';
import CutList from './cut-list/CutList.astro';
import DriftStudy from './drift-study/DriftStudy.astro';
import LayerStudy from './layer-study/LayerStudy.astro';
import LayoutStudy from './layout-study/LayoutStudy.astro';
import MakeUp from './make-up/MakeUp.astro';
import MaterialsList from './materials-list/MaterialsList.astro';
import MyPiece from './my-piece/MyPiece.astro';
import Piece from './piece/Piece.astro';
import PleatStudy from './pleat-study/PleatStudy.astro';
import Practice from './practice/Practice.astro';
import Predict from './predict/Predict.astro';
import SeamStudy from './seam-study/SeamStudy.astro';
import ShoppingList from './shopping-list/ShoppingList.astro';
import Size from './size/Size.astro';
import Step from './step/Step.astro';
import Tip from './tip/Tip.astro';
import Working from './working/Working.astro';
import YourSize from './your-size/YourSize.astro';

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
