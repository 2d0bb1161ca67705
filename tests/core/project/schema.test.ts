import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { MaterialsFile, ProjectFile } from '../../../src/core/project/index.ts';
import { checkMaterials } from '../../../src/core/project/index.ts';
import { lines } from './files.ts';

type JsonSchema = {
  description?: string;
  properties?: Record<string, JsonSchema>;
  anyOf?: JsonSchema[];
  $ref?: string;
};

/** Every field of a JSON Schema, by its path. */
function fieldsOf(schema: unknown, path: string, found: Map<string, JsonSchema>): Map<string, JsonSchema> {
  if (typeof schema !== 'object' || schema === null) return found;
  for (const [name, field] of Object.entries((schema as JsonSchema).properties ?? {}))
    found.set(`${path}${name}`, field);
  for (const [key, inner] of Object.entries(schema))
    fieldsOf(inner, key === 'properties' ? path : `${path}${key} `, found);
  return found;
}

describe('the schema of project.yaml', () => {
  const json = z.toJSONSchema(ProjectFile, { io: 'input' });

  it('is a JSON Schema for editors, with nothing lost', () => {
    const text = JSON.stringify(json);
    for (const field of ['between', 'pleats', 'folds', 'allowance', 'holds', 'adds', 'finished'])
      expect(text).toContain(`"${field}"`);
    expect(Object.keys(json.$defs ?? {})).toEqual(
      expect.arrayContaining(['Amount', 'BothEditions', 'Length', 'Measure', 'Piece', 'Edges']),
    );
  });

  it('says what each field means', () => {
    const fields = fieldsOf(json, '', new Map());
    expect(fields.size).toBeGreaterThan(60);
    const silent = [...fields].filter(([, field]) => !field.description && !field.$ref).map(([path]) => path);
    expect(silent).toEqual([]);
  });

  it('refuses fields that nobody knows, wherever they stand', () => {
    const base = { title: 'Bag', measures: {}, pieces: {} };
    const unknownIn = (file: unknown) =>
      ProjectFile.safeParse(file).error?.issues.map(({ code, path }) => [code, path.join(' > ')]);
    expect(ProjectFile.safeParse(base).success).toBe(true);
    expect(unknownIn({ ...base, colour: 'red' })).toEqual([['unrecognized_keys', '']]);
    expect(unknownIn({ ...base, pieces: { bag: { siez: [1, 2] } } })).toEqual([['unrecognized_keys', 'pieces > bag']]);
    expect(unknownIn({ ...base, pieces: { bag: { size: [1, 2], pleats: { dept: 1 } } } })).toEqual([
      ['unrecognized_keys', 'pieces > bag > pleats'],
    ]);
    expect(unknownIn({ ...base, measures: { ease: { in: 1, betwen: [1, 2] } } })).toEqual([
      ['unrecognized_keys', 'measures > ease'],
    ]);
  });

  it('wants a title, measures and pieces, and no more', () => {
    expect(ProjectFile.safeParse({}).error?.issues.map((issue) => issue.path.join('.'))).toEqual([
      'title',
      'measures',
      'pieces',
    ]);
    expect(ProjectFile.safeParse(null).success).toBe(false);
  });
});

describe('the schema of materials.yaml', () => {
  it('is a JSON Schema, too, and wants a source beside each figure', () => {
    expect(JSON.stringify(z.toJSONSchema(MaterialsFile, { io: 'input' }))).toContain('"thickness"');
    const felt = { kind: 'cloth', thickness: { mm: 1 } };
    expect(MaterialsFile.safeParse({ felt }).error?.issues.map((issue) => issue.path.join('.'))).toEqual([
      'felt.thickness.source',
    ]);
  });

  it('leaves lengths to be read, and says which cannot be', () => {
    const felt = { kind: 'cloth' as const, width: { in: '36 inch', mm: 'wide', source: 'shop' } };
    expect(lines(checkMaterials({ felt }))).toEqual([
      expect.stringMatching(/^error felt > width > mm: not-a-length: /u),
    ]);
  });
});
