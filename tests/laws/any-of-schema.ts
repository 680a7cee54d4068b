import fc from 'fast-check';
import * as z from 'zod';

/** What a schema says of numbers, choices and objects of these, as far as the settings of a script need it. */
interface Shape {
  readonly type?: string;
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
  readonly exclusiveMaximum?: number;
  readonly properties?: Readonly<Record<string, Shape>>;
}

/** Numbers nearer to nothing than a person would write are nothing. */
const written = (value: number) => (Math.abs(value) < 1e-6 ? 0 : value);

/** Anything that fits a schema: now an end of its range, now a whole number, now any. */
export function anyOf<Schema extends z.ZodType>(schema: Schema): fc.Arbitrary<z.infer<Schema>> {
  const fits = fromShape(z.toJSONSchema(schema) as Shape).filter((value) => schema.safeParse(value).success);
  return (schema.safeParse(undefined).success ? fc.option(fits, { nil: undefined }) : fits) as fc.Arbitrary<
    z.infer<Schema>
  >;
}

function fromShape(shape: Shape): fc.Arbitrary<unknown> {
  if (shape.enum) return fc.constantFrom(...shape.enum);
  if (shape.properties)
    return fc.record(Object.fromEntries(Object.entries(shape.properties).map(([key, one]) => [key, fromShape(one)])));
  if (shape.type === 'boolean') return fc.boolean();
  const { minimum = shape.exclusiveMinimum, maximum = shape.exclusiveMaximum } = shape;
  if (shape.type !== 'number' || minimum === undefined || maximum === undefined)
    throw new Error(`no draw is known for ${JSON.stringify(shape)}: give the number a least and a most`);
  const whole = { min: Math.ceil(minimum), max: Math.floor(maximum) };
  return fc.oneof(
    fc.constantFrom(minimum, maximum),
    ...(whole.min <= whole.max ? [fc.integer(whole)] : []),
    fc.double({ min: minimum, max: maximum, noNaN: true }).map(written),
  );
}
