import {
  absDependencies,
  addDependencies,
  ceilDependencies,
  create,
  divideDependencies,
  expDependencies,
  largerDependencies,
  largerEqDependencies,
  logDependencies,
  maxDependencies,
  minDependencies,
  multiplyDependencies,
  parseDependencies,
  powDependencies,
  smallerDependencies,
  smallerEqDependencies,
  sqrtDependencies,
  subtractDependencies,
  unaryMinusDependencies,
} from 'mathjs/number';

/** The few functions a working uses, and what each needs. This module is heavy: import it when it is asked for. */
const functions = {
  absDependencies,
  addDependencies,
  ceilDependencies,
  divideDependencies,
  expDependencies,
  largerDependencies,
  largerEqDependencies,
  logDependencies,
  maxDependencies,
  minDependencies,
  multiplyDependencies,
  parseDependencies,
  powDependencies,
  smallerDependencies,
  smallerEqDependencies,
  sqrtDependencies,
  subtractDependencies,
  unaryMinusDependencies,
};

// The library's types say that each may be missing; it exports every one.
const math = create(functions as Required<typeof functions> as Parameters<typeof create>[0]);

export const parse = math.parse;

const refuse = () => {
  throw new RangeError('this is not allowed in a working');
};
// Nothing may be added to what is above, whatever reaches these names.
math.import(
  { import: refuse, createUnit: refuse, evaluate: refuse, parse: refuse, simplify: refuse, derivative: refuse },
  { override: true },
);
