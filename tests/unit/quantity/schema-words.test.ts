import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { sayIssue } from '@/lib/quantity/schema-words';
import { SEED } from '@/tests/laws/law';

/** Every schema that any module of the library, the content or the screens gives out. */
const modules = import.meta.glob(
  [
    '/lib/**/*.ts',
    '/content/**/*.ts',
    '/app/{keep,bring,bench,desk,front,lessons,gases}/**/*.ts',
    '!/app/**/*.worker.ts',
  ],
  { eager: true },
);
const everySchema = Object.entries(modules).flatMap(([file, exports]) =>
  Object.entries(exports as object)
    .filter((entry): entry is [string, z.ZodType] => entry[1] instanceof z.ZodType)
    .map(([name, schema]) => ({ name: `${file} ${name}`, schema })),
);

/** A schema with all schemas it is made of, each once. */
function partsOf(schema: z.ZodType, found = new Set<z.ZodType>()): Set<z.ZodType> {
  // Checks and changes of a value are made for what has passed the schema they hang on.
  if (found.has(schema) || schema.def.type === 'custom' || schema.def.type === 'transform') return found;
  found.add(schema);
  const look = (value: unknown) => {
    if (value instanceof z.ZodType) partsOf(value, found);
    else if (Array.isArray(value)) value.forEach(look);
    else if (typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype)
      Object.values(value).forEach(look);
  };
  Object.values(schema.def).forEach(look);
  return found;
}

/** Each with the parts that no schema before it is made of. */
const known = new Set<z.ZodType>();
const schemas = everySchema
  .map(({ name, schema }) => {
    const before = new Set(known);
    partsOf(schema, known);
    return { name, parts: [...known].filter((part) => !before.has(part)) };
  })
  .filter(({ parts }) => parts.length > 0);

/** Of the right kind and yet out of bounds. */
const odd = fc.oneof(
  fc.anything({ maxDepth: 3 }),
  fc.constantFrom<unknown>(
    '',
    ' ',
    'x'.repeat(300_000),
    '2026-13-45',
    -1,
    0,
    0.5,
    1e9,
    -1e9,
    NaN,
    Infinity,
    [],
    {},
    [[]],
    { '': 0 },
  ),
  fc.array(fc.constantFrom<unknown>('', 0, {}), { minLength: 200, maxLength: 200 }),
);

/** Words the library uses for what it refuses. */
const LIBRARY = /\b(expected|received|Invalid|Unrecognized|Too (big|small))\b/;

/** Whether what is said of a fault shows the library's words or the workings of the program. */
function inOtherWords(issue: z.core.$ZodIssue): boolean {
  const said = sayIssue(issue);
  return (
    LIBRARY.test(said) ||
    said.includes('undefined') ||
    /NaN|\[object|function|=>/.test(said.replace(/“[^”]*”/g, '')) ||
    (issue.code !== 'custom' && said.includes(issue.message))
  );
}

describe('what a schema refuses', () => {
  it('is looked for in all schemas there are', () => {
    expect(everySchema.length).toBeGreaterThan(20);
  });

  it.each(schemas)('is told in our own words: $name', ({ parts }) => {
    fc.assert(
      fc.property(fc.constantFrom(...parts), odd, (part, value) => {
        const read = part.safeParse(value);
        if (!read.success) expect(read.error.issues.filter(inOtherWords).map(sayIssue)).toEqual([]);
      }),
      { numRuns: 20 + 15 * parts.length, seed: SEED },
    );
  });

  it.each([
    [z.number().max(604_800), 1e9, 'It is more than 604800'],
    [z.number().positive(), 0, 'It is not more than 0'],
    [z.object({ depthM: z.number() }), {}, '“depthM” is missing'],
    [z.object({ legs: z.array(z.string().max(3)) }), { legs: ['long'] }, '“legs, 0” is longer than 3 characters'],
    [z.array(z.number()).min(2), [1], 'It has fewer than 2 in it'],
    [z.enum(['fresh', 'salt']), 'lake', 'It is none of fresh, salt'],
    [z.strictObject({}), { more: 1 }, 'It has what is not known here: “more”'],
    [z.iso.datetime(), 'soon', 'It is not a date and a time of day such as 2026-05-01T10:00:00Z'],
    [z.number().refine(() => false, 'the low one is higher'), 1, 'It is not sound: the low one is higher'],
  ])('says what was found', (schema, value, words) => {
    expect(sayIssue(schema.safeParse(value).error!.issues[0]!)).toBe(words);
  });
});
