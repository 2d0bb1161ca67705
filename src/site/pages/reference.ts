/** The authoring reference, read off the schemas themselves so that it cannot go stale. */
import { z } from 'zod';

export type ReferenceField = {
  /** Where it stands, from the file's top: `['pieces', '…', 'pleats', 'depth']`. `…` stands for a name of the author's own. */
  path: string[];
  /** What it means, in the schema's own words. */
  about: string;
  needed: boolean;
};

type Node = {
  $ref?: string;
  description?: string;
  properties?: Record<string, Node>;
  additionalProperties?: Node | boolean;
  items?: Node | boolean;
  prefixItems?: Node[];
  anyOf?: Node[];
  required?: string[];
};

/**
 * Every field of a schema, from the outside in, in the order of the schema.
 * @param schema of a file or of a lesson word's attributes
 */
export function fieldsOf(schema: z.ZodType): ReferenceField[] {
  const top = z.toJSONSchema(schema, { io: 'input' }) as Node & { $defs?: Record<string, Node> };
  const named = (node: Node): Node => {
    const name = node.$ref?.split('/').at(-1);
    const found = name === undefined ? undefined : top.$defs?.[name];
    return found ? { ...found, ...(node.description && { description: node.description }) } : node;
  };
  const fields: ReferenceField[] = [];

  const inside = (node: Node, path: string[]): void => {
    const { properties, additionalProperties, items, anyOf, required = [] } = named(node);
    for (const [key, value] of Object.entries(properties ?? {})) add(value, [...path, key], required.includes(key));
    if (typeof additionalProperties === 'object') add(additionalProperties, [...path, '…'], false);
    if (typeof items === 'object') inside(items, path);
    // Of several ways to write a thing, the one with fields has more to tell.
    for (const way of anyOf ?? []) if (!isLength(way)) inside(way, path);
  };
  const add = (node: Node, path: string[], needed: boolean): void => {
    const about = named(node).description;
    // A field that can be written in two ways is still one field.
    const known = fields.some((field) => field.path.join() === path.join());
    if (about && !known) fields.push({ path, about, needed });
    if (!isLength(node)) inside(node, path);
  };
  // A length can be written in many ways, but they are told once and not at each of its hundred places.
  const isLength = (node: Node) => /\/(Length|Amount|BothEditions|Edges)$/.test(node.$ref ?? '');

  inside(top, []);
  return fields;
}
