import { plainNumber } from '../../../quantity/number';
import { printFactors } from '../../../quantity/percent';
import { AIR } from '../../../physics/gas';
import { WATERS } from '../../../physics/water';
import { gasOf } from '../../gas-schema-of';
import { USUAL_DESCENT_M_MIN } from '../../bounds';
import { parseGas, writeGas } from '../../gas-text';
import { readDescentRate, readPlanRate, readRounding, readStopDepth, writeRounding } from './plan-values';
import { field } from './setting';
import * as values from './setting-values';

/**
 * Every setting that is one field of the settings and depends on no other: one entry makes a setting. The schema and the
 * default of the settings (`dive.ts`, `default-settings.ts`), the language, its reference page, the editor's completion
 * and the dives that the round trip is tried on all come from this table.
 */
export const FIELDS = {
  water: field({
    name: 'water',
    also: ['waters'],
    help: 'The water dived in. Reference water is what depth gauges are set to: 10 m to the bar.',
    unless: 'reference',
    examples: ['reference', 'salt'],
    choices: ['reference', 'fresh', 'salt'],
    always: true,
    schema: (z) => z.enum(WATERS),
    usual: 'reference',
    read: values.readWater,
    write: (water) => water,
  }),
  model: {
    variant: field({
      name: 'model',
      also: ['tissue model'],
      help: 'Which set of ZH-L16 limits is used.',
      unless: 'ZH-L16C',
      examples: ['ZH-L16C', 'ZH-L16B'],
      choices: ['ZH-L16A', 'ZH-L16B', 'ZH-L16C'],
      schema: (z) => z.enum(['A', 'B', 'C']),
      usual: 'C',
      read: values.readVariant,
      write: (variant) => `ZH-L16${variant}`,
    }),
    first: field({
      name: 'first compartment',
      also: ['first'],
      help: 'The fastest compartment: 1b (5 min for nitrogen) or 1 (4 min).',
      unless: '1b',
      examples: ['1b', '1'],
      choices: ['1b', '1'],
      schema: (z) => z.enum(['1', '1b']),
      usual: '1b',
      read: (text) => values.readChoice(text, { 1: '1', '1b': '1b' } as const, ['1b', '1']),
      write: (first) => first,
    }),
    respiratoryQuotient: field({
      name: 'respiratory quotient',
      also: ['rq'],
      help: 'Carbon dioxide given off for each oxygen used. ZH-L16 takes 1; a resting body is nearer 0.8.',
      unless: '1',
      examples: ['1', '0.8'],
      schema: (z) => z.number().min(0.6).max(1.2),
      usual: 1,
      read: (text) => values.readPlainNumber(text, 0.6, 1.2),
      write: plainNumber,
    }),
  },
  gradientFactors: field({
    name: 'gradient factors',
    also: ['gradient factor', 'gf', 'gfs'],
    help: 'How much of each limit may be used, in percent: at the first stop, then at the surface.',
    unless: '85/85',
    examples: ['85/85', '30/85'],
    always: true,
    schema: (z) =>
      z
        .object({ low: z.number().min(0.01).max(1), high: z.number().min(0.01).max(1) })
        .refine((gf) => gf.low <= gf.high, 'the low gradient factor is higher than the high one'),
    usual: { low: 0.85, high: 0.85 },
    read: values.readGradientFactors,
    write: printFactors,
  }),
  plan: {
    ascentMMin: field({
      name: 'plan ascent',
      also: ['planned ascent', 'plan ascent rate', 'ascent rate', 'rate of ascent'],
      help: 'The rate of ascent that stop schedules assume, and that a step up goes at when it gives none.',
      unless: '9 m/min',
      examples: ['9 m/min', '30 ft/min'],
      schema: (z) => z.number().positive().max(60),
      usual: 9,
      read: readPlanRate,
      write: (rateMMin) => `${plainNumber(rateMMin)} m/min`,
    }),
    descentMMin: field({
      name: 'plan descent',
      also: ['planned descent', 'plan descent rate', 'descent rate', 'rate of descent'],
      help: 'The rate that a step down goes at when it gives none.',
      unless: `${USUAL_DESCENT_M_MIN} m/min`,
      examples: ['18 m/min', '60 ft/min'],
      schema: (z) => z.number().positive().max(60).optional(),
      usual: undefined,
      read: readDescentRate,
      write: (rateMMin) => `${plainNumber(rateMMin)} m/min`,
    }),
    stopStepM: field({
      name: 'stop step',
      also: ['stop spacing', 'stops every'],
      help: 'How far apart the stops of a schedule are.',
      unless: '3 m',
      examples: ['3 m', '10 ft'],
      schema: (z) => z.number().min(1).max(10),
      usual: 3,
      read: readStopDepth,
      write: (stepM) => `${plainNumber(stepM)} m`,
    }),
    lastStopM: field({
      name: 'last stop',
      also: ['last stop at'],
      help: 'The shallowest stop of a schedule.',
      unless: '3 m',
      examples: ['3 m', '6 m'],
      schema: (z) => z.number().min(1).max(10),
      usual: 3,
      read: readStopDepth,
      write: (depthM) => `${plainNumber(depthM)} m`,
    }),
    stopRoundingMin: field({
      name: 'stop rounding',
      also: ['stop time rounding', 'round stops to'],
      help: 'Stops last whole multiples of this.',
      unless: '1 min',
      examples: ['1 min', '10 s'],
      schema: (z) => z.number().positive().max(5),
      usual: 1,
      read: readRounding,
      write: writeRounding,
    }),
  },
  gas: field({
    name: 'gas',
    also: ['start gas', 'starting gas', 'breathing'],
    help: 'The gas breathed when each dive begins. Two numbers are oxygen and helium, in percent.',
    unless: 'air',
    examples: ['air', '32%', '18/45', 'oxygen'],
    inDive: 'switch to',
    always: true,
    schema: gasOf,
    usual: AIR,
    read: parseGas,
    write: writeGas,
  }),
};
