/** The same project, made the same way in another of its sizes. */
import { resolveProject } from './resolve.ts';
import { wayOf } from './ways.ts';
import type { Pattern, Role } from './pattern.ts';

/**
 * A pattern in another size: options, choices and materials stay, and so do a learner's values but for the measures that
 * a size gives.
 *
 * @param size one of `pattern.sizes.of`
 * @example inSize(pattern, 'large').measures.waist.value // => 863.6
 */
export function inSize(pattern: Pattern, size: string): Pattern {
  const { sizes, measures, origin } = pattern;
  if (!sizes || sizes.chosen === size) return pattern;
  const values = Object.values(measures).flatMap(({ name, value, adjustable }) =>
    // What nobody moved may follow from the size.
    adjustable && !sizes.measures.includes(name) && Math.abs(value - adjustable.lesson) > 1e-6
      ? [[name, value] as const]
      : [],
  );
  const made = resolveProject(origin.file, {
    edition: origin.edition,
    ...wayOf(pattern),
    size,
    values: Object.fromEntries(values),
  });
  const materials = Object.entries(made.materials).map(([name, role]): [string, Role] => {
    const { material, lining } = pattern.materials[name] ?? {};
    return [name, { ...role, ...(material && { material }), ...(lining && { lining }) }];
  });
  return { ...made, materials: Object.fromEntries(materials) };
}
