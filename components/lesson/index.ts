/** The words an author may use in a lesson, and what shows each: `<Content components={words} />`. */
import AllowanceStudy from './AllowanceStudy.astro';
import AskSize from './AskSize.astro';
import Caution from './Caution.astro';
import CutList from './CutList.astro';
import MaterialsList from './MaterialsList.astro';
import Piece from './Piece.astro';
import PleatStudy from './PleatStudy.astro';
import Size from './Size.astro';
import Tip from './Tip.astro';
import Working from './Working.astro';
import YourSize from './YourSize.astro';

export const words = {
  AllowanceStudy,
  AskSize,
  Caution,
  CutList,
  MaterialsList,
  Piece,
  PleatStudy,
  Size,
  Tip,
  Working,
  YourSize,
};
