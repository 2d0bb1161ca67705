import { z } from 'zod';
import { namesBeside } from '../../core/project/schema.ts';

/**
 * The names that a schema knows at a path; none where any name may stand. Where names depend on one another, only those
 * that go with the value there.
 *
 * @example
 * knownNames(z.object({ seam: z.object({ in: z.string(), mm: z.string() }) }), ['seam']) // => ['in', 'mm']
 */
export function knownNames(schema: z.ZodType, path: Path, value: Readonly<Record<string, unknown>> = {}): string[] {
  const shapes = schemasAt(schema, path).flatMap(unwrapped).filter(isObject);
  return [...new Set(shapes.flatMap((s) => namesBeside.get(s)?.of(value) ?? Object.keys(s._zod.def.shape)))];
}

/** The names that a value begins with, where its other names depend on them: the verbs of a step. */
export const firstNames = (schema: z.ZodType, path: Path): string[] =>
  schemasAt(schema, path)
    .flatMap(unwrapped)
    .flatMap((s) => (isObject(s) ? [...(namesBeside.get(s)?.first ?? [])] : []));

/**
 * What a schema says about the value at a path.
 *
 * @example
 * describedAs(z.object({ seam: z.string().describe('The allowance.') }), ['seam']) // => 'The allowance.'
 */
export function describedAs(schema: z.ZodType, path: Path): string | undefined {
  const said = schemasAt(schema, path).map((s) => z.globalRegistry.get(s)?.description);
  return said.find((text) => text !== undefined);
}

/**
 * The values that may stand at a path, where only these may.
 *
 * @example
 * choicesAt(z.object({ kind: z.enum(['valley', 'mountain']) }), ['kind']) // => ['valley', 'mountain']
 */
export function choicesAt(schema: z.ZodType, path: Path): string[] | undefined {
  const ends = schemasAt(schema, path).flatMap(unwrapped);
  const choices = ends.map(choicesOf);
  if (ends.length === 0 || choices.includes(undefined)) return undefined;
  return [...new Set(choices.flatMap((some) => some ?? []))];
}

function choicesOf(schema: z.core.$ZodType): string[] | undefined {
  const def = (schema as z.core.$ZodTypes)._zod.def;
  if (def.type === 'enum') return Object.values(def.entries).map(String);
  if (def.type === 'literal') return def.values.map(String);
  return def.type === 'boolean' ? ['true', 'false'] : undefined;
}

/** Whether a text, a number or one of some words may stand at a path. */
export const takesPlain = (schema: z.ZodType, path: Path): boolean =>
  schemasAt(schema, path)
    .flatMap(unwrapped)
    .some((one) =>
      ['string', 'number', 'int', 'enum', 'literal', 'boolean'].includes((one as z.core.$ZodTypes)._zod.def.type),
    );

/** Whether a value may stand at a path. */
export const accepts = (schema: z.ZodType, path: Path, value: unknown): boolean =>
  schemasAt(schema, path).some((one) => z.safeParse(one, value).success);

/** Whether several values may stand at a path. */
export const takesList = (schema: z.ZodType, path: Path): boolean =>
  schemasAt(schema, path)
    .flatMap(unwrapped)
    .some((one) => ['array', 'tuple'].includes((one as z.core.$ZodTypes)._zod.def.type));

type Path = readonly (string | number)[];

const schemasAt = (schema: z.ZodType, path: Path): z.core.$ZodType[] =>
  path.reduce<z.core.$ZodType[]>((here, step) => here.flatMap((s) => inside(s, step)), [schema]);

const isObject = (s: z.core.$ZodType): s is z.core.$ZodObject => s._zod.def.type === 'object';

/** Takes away everything that is not a shape: optional, default, pipes, unions. */
function unwrapped(schema: z.core.$ZodType): z.core.$ZodType[] {
  const def = (schema as z.core.$ZodTypes)._zod.def;
  switch (def.type) {
    case 'optional':
    case 'nullable':
    case 'default':
    case 'prefault':
    case 'readonly':
    case 'nonoptional':
    case 'catch':
      return unwrapped(def.innerType);
    case 'pipe':
      return [...unwrapped(def.in), ...unwrapped(def.out)];
    case 'lazy':
      return unwrapped(def.getter());
    case 'union':
      return def.options.flatMap(unwrapped);
    default:
      return [schema];
  }
}

function inside(schema: z.core.$ZodType, step: string | number): z.core.$ZodType[] {
  return unwrapped(schema).flatMap((s) => {
    const def = (s as z.core.$ZodTypes)._zod.def;
    if (def.type === 'object') return def.shape[step] ? [def.shape[step]] : [];
    if (def.type === 'record') return [def.valueType];
    if (def.type === 'array') return [def.element];
    if (def.type === 'tuple') return def.items[Number(step)] ? [def.items[Number(step)]!] : [];
    return [];
  });
}
