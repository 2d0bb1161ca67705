/** The room that a page gives its drawings of the making. */
import { NARROWEST, type Fit } from '../../src/core/index.ts';

/** As on the narrowest screen, so that what is drawn anew takes the very place of what the page was built with. */
export const ROOM: Fit = { width: NARROWEST };

/** The same, what is drawn to scale no higher than this, in mm: controls stay in sight. */
export const low = (height: number): Fit => ({ ...ROOM, height });
