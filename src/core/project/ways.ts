/** In which way a project is made: its size, its options, and which one of each choice. */
import type { Compiled } from './compile.ts';
import type { Pattern } from './pattern.ts';

/** What `resolveProject` takes beside values: `{ options: { flap: false, outside: 'plain' }, size: 'medium' }`. */
export type ProjectWay = { options: Record<string, boolean | string>; size?: string };

/**
 * The way a pattern is made, so that another pattern can be made alike.
 *
 * @example wayOf(pattern) // => { options: { flap: false, outside: 'plain' }, size: 'medium' }
 */
export function wayOf({ options, choices, sizes }: Pick<Pattern, 'options' | 'choices' | 'sizes'>): ProjectWay {
  return {
    options: {
      ...Object.fromEntries(Object.entries(options).map(([name, { on }]) => [name, on])),
      ...Object.fromEntries(Object.entries(choices).map(([name, { chosen }]) => [name, chosen])),
    },
    ...(sizes && { size: sizes.chosen }),
  };
}

/** The names of the features that are on in a pattern, as its file’s compiled form calls them. */
export function featuresOf({ options, choices }: Pattern, { features }: Compiled): Set<string> {
  return new Set(
    [...features.values()].flatMap(({ name, of }) => {
      const isOn = of ? choices[of.choice]?.chosen === of.one : options[name]?.on;
      return isOn ? [name] : [];
    }),
  );
}
