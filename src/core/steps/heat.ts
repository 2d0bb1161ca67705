/** How hot an iron is, as people set it: by the dots of the care label, in °C and in °F. */

/**
 * The hottest sole-plate at one, two and three dots, in °C: 110, 150 and 200 (GINETEX table of care symbols, the set of
 * ISO 3758). One dot goes without steam.
 */
export const IRON_DOTS = [110, 150, 200] as const;

/** The coolest setting of an iron, one dot, in °C. */
export const COOLEST = IRON_DOTS[0];

/** How many dots are no hotter than this, and whether it lies on a setting or above it. */
export const dotsFor = (celsius: number): { dots: number; isBetween: boolean } => {
  const dots = IRON_DOTS.filter((hottest) => hottest <= celsius).length;
  return { dots, isBetween: dots < IRON_DOTS.length && IRON_DOTS[dots - 1] !== celsius };
};

/**
 * A heat in both scales.
 *
 * @example sayHeat(150) // => '150 °C (302 °F)'
 */
export const sayHeat = (celsius: number): string => `${celsius} °C (${Math.round((celsius * 9) / 5 + 32)} °F)`;

/**
 * How to set an iron for what takes no more than this heat.
 *
 * @example sayIron(150) // => 'two dots, no hotter than 150 °C (302 °F)'
 * @example sayIron(135) // => 'between one dot and two, no hotter than 135 °C (275 °F)'
 */
export function sayIron(celsius: number): string {
  const { dots, isBetween } = dotsFor(celsius);
  const settings = ['less than one dot', 'one dot, without steam', 'two dots', 'three dots'];
  const between = ['less than one dot', 'between one dot and two', 'between two dots and three'];
  return `${(isBetween ? between : settings)[dots]}, no hotter than ${sayHeat(celsius)}`;
}
