import * as z from 'zod';

/* Long because the shapes of all published files stand together, and one map at the end names them. */

/** Where a value comes from. `read` is always in a secondary source: no original was at hand. */
export const OBTAINED = ['read', 'from memory', 'derived', 'common practice'] as const;
export type Obtained = (typeof OBTAINED)[number];

const obtained = z.enum(OBTAINED);
const said = z.string().min(1);
const compartment = z.enum([
  '1',
  '1b',
  '2',
  '3',
  '4',
  '5',
  '6',
  '7',
  '8',
  '9',
  '10',
  '11',
  '12',
  '13',
  '14',
  '15',
  '16',
]);
const positive = z.number().positive();
const fraction = z.number().min(0).max(1);
const remark = z.strictObject({ text: said, obtained });

const tolerance = z.strictObject({ value: z.number().min(0), unit: z.string(), reason: z.string().min(10) });
const none = z.strictObject({});
function tolerances<const Names extends readonly [string, ...string[]]>(...names: Names) {
  return z.record(z.enum(names), tolerance);
}

/** What every file of published values begins with. */
const head = { title: said, source: said, units: said, note: said, disagreements: z.array(said) };

export const zhl16Schema = z.strictObject({
  ...head,
  tolerances: tolerances('a', 'b', 'halfTimeRatio', 'mixture'),
  relation: z.strictObject({
    text: said,
    obtained,
    exceptions: z.array(z.strictObject({ compartment, b: fraction, relationGives: fraction, note: said })),
  }),
  heliumRatio: z.strictObject({
    value: positive,
    obtained,
    text: said,
    exceptions: z.array(z.strictObject({ compartment, value: positive, note: said })),
  }),
  variants: z.strictObject({ obtained, B: z.array(compartment), C: z.array(compartment), text: said }),
  mixtureExample: z.strictObject({
    obtained,
    compartment,
    o2: fraction,
    he: fraction,
    a: positive,
    b: fraction,
    text: said,
  }),
  values: z
    .array(
      z.strictObject({
        compartment,
        nitrogen: z.strictObject({
          halfTimeMin: positive,
          aA: positive,
          aB: positive,
          aC: positive,
          b: fraction,
          obtained: z.strictObject({ halfTimeMin: obtained, aA: obtained, aB: obtained, aC: obtained, b: obtained }),
        }),
        helium: z.strictObject({
          halfTimeMin: positive,
          a: positive,
          b: fraction,
          obtained: z.strictObject({ halfTimeMin: obtained, a: obtained, b: obtained }),
        }),
      }),
    )
    .length(17),
});

export const mValuesSchema = z.strictObject({
  ...head,
  tolerances: tolerances('surfacing', 'slope'),
  surfaceMsw: positive,
  values: z
    .array(
      z.discriminatedUnion('gas', [
        z.strictObject({
          gas: z.literal('nitrogen'),
          compartment,
          slope: positive,
          surfacingMsw: z.strictObject({ A: positive, B: positive, C: positive }),
          obtained,
        }),
        z.strictObject({ gas: z.literal('helium'), compartment, slope: positive, surfacingMsw: positive, obtained }),
      ]),
    )
    .length(34),
});

export const gradientFactorsSchema = z.strictObject({
  ...head,
  tolerances: tolerances('worked'),
  values: z.array(
    z.strictObject({
      compartment,
      a: positive,
      b: fraction,
      tensionBar: positive,
      gf: fraction,
      toleratedAmbientBar: positive,
      limitAtOneBar: positive,
      obtained,
    }),
  ),
});

export const loadingSchema = z.strictObject({
  ...head,
  tolerances: tolerances('worked', 'vapour', 'offset'),
  waterVapour: z.strictObject({ mmHg: positive, bar: positive, obtained }),
  alveolarCarbonDioxide: z.strictObject({ bar: positive, obtained }),
  respiratoryQuotients: z.array(z.strictObject({ value: positive, by: said, obtained })),
  lungOffset: z.array(z.strictObject({ respiratoryQuotient: positive, bar: positive, obtained })),
  constantDepth: z.array(
    z.strictObject({
      inertFraction: fraction,
      startAmbientBar: positive,
      ambientBar: positive,
      halfTimeMin: positive,
      minutes: positive,
      tensionBar: positive,
      obtained,
    }),
  ),
  changingDepth: z.array(
    z.strictObject({
      inertFraction: fraction,
      fromAmbientBar: positive,
      toAmbientBar: positive,
      ambientBarPerMin: z.number(),
      halfTimeMin: positive,
      minutes: positive,
      tensionBar: positive,
      obtained,
    }),
  ),
});

export const atmosphereSchema = z.strictObject({
  ...head,
  tolerances: tolerances('levels', 'values'),
  seaLevel: z.strictObject({ hPa: positive, obtained }),
  cabin: z.strictObject({ altitudeFt: positive, altitudeM: positive, obtained, text: said }),
  levels: z.array(z.strictObject({ hPa: positive, heightM: z.number(), obtained })),
  values: z.array(z.strictObject({ altitudeFt: z.number(), psia: positive, obtained })),
});

export const waterSchema = z.strictObject({
  ...head,
  tolerances: tolerances('reference', 'msw', 'fsw', 'fswPerMsw', 'fresh', 'salt'),
  reference: z.strictObject({ kgM3: positive, barPerM: positive, obtained, text: said }),
  msw: z.strictObject({ bar: positive, obtained, text: said }),
  fsw: z.strictObject({ pa: positive, lbPerCubicFt: positive, obtained, text: said }),
  fswPerMsw: z.strictObject({ value: positive, obtained }),
  eos80: z.strictObject({
    fresh: z.strictObject({ temperatureC: z.number(), kgM3: positive, obtained, text: said }),
    salt: z.strictObject({ temperatureC: z.number(), salinity: positive, kgM3: positive, obtained, text: said }),
  }),
  seaWater64: z.strictObject({ kgM3: positive, obtained, text: said }),
});

const ascentRatesSchema = z.strictObject({
  ...head,
  tolerances: none,
  rates: z.array(
    z.strictObject({
      by: said,
      ftMin: positive.optional(),
      mMin: positive.optional(),
      text: said.optional(),
      obtained,
    }),
  ),
  findings: z.array(z.strictObject({ by: said, text: said, obtained })),
});

export const boyleSchema = z.strictObject({
  ...head,
  tolerances: tolerances('exact', 'feet', 'quart'),
  metres: z.array(z.strictObject({ fromM: positive, toM: z.number().min(0), factor: positive, obtained })),
  volumeAtDepth: z.array(z.strictObject({ depthM: positive, fraction, obtained })),
  feet: z.array(z.strictObject({ fromFt: positive, toFt: z.number().min(0), factor: positive, obtained })),
  quarts: z.array(
    z.strictObject({ fromFt: positive, toFt: z.number().min(0), startQt: positive, endQt: positive, obtained }),
  ),
});

const navyLimits = z.array(z.strictObject({ depthFsw: positive, minutes: positive, obtained }));
export const navyNoStopSchema = z.strictObject({
  ...head,
  tolerances: tolerances('band'),
  comparedFromFsw: positive,
  comparedNote: said,
  revision7: navyLimits,
  revision4: navyLimits,
});

export const noStop1986Schema = z.strictObject({
  ...head,
  tolerances: tolerances('band', 'shallowBand'),
  altitudeM: positive,
  comparedFromM: positive,
  comparedNote: said,
  values: z.array(z.strictObject({ depthM: positive, minutes: positive, obtained })),
});

const flyingSchema = z.strictObject({
  ...head,
  tolerances: none,
  waits: z.array(z.strictObject({ after: said, hours: positive.nullable(), text: said.optional(), obtained })),
  findings: z.array(remark),
});

export const oxygenSchema = z.strictObject({
  ...head,
  tolerances: tolerances('limit', 'unitsPerMin', 'remarked'),
  exponent: z.strictObject({ textbook: positive, diving: positive }),
  limits: z.array(
    z.strictObject({
      po2Atm: positive,
      singleMin: positive,
      dailyMin: positive,
      obtained: z.strictObject({ singleMin: obtained, dailyMin: obtained }),
    }),
  ),
  dose: z.array(z.strictObject({ po2Atm: positive, unitsPerMin: positive, obtained, note: said.optional() })),
});

const depth = z.number().min(0);
export const gasDepthsSchema = z.strictObject({
  ...head,
  tolerances: tolerances('metres', 'feet', 'fraction'),
  deepest: z.array(z.strictObject({ o2: fraction, po2Bar: positive, depthM: depth, obtained })),
  deepestFeet: z.array(z.strictObject({ o2: fraction, po2Atm: positive, depthFsw: depth, obtained })),
  shallowest: z.array(z.strictObject({ o2: fraction, po2Bar: positive, depthM: depth, obtained })),
  equivalentAir: z.array(z.strictObject({ o2: fraction, depthM: depth, equivalentM: depth, obtained })),
  equivalentNarcotic: z.array(
    z.strictObject({ o2: fraction, he: fraction, depthM: depth, withOxygenM: depth, nitrogenAloneM: depth, obtained }),
  ),
  bestMix: z.array(
    z.strictObject({
      depthM: depth,
      po2Bar: positive,
      o2: fraction,
      asAirAtM: depth.optional(),
      heWithOxygen: fraction.optional(),
      heNitrogenAlone: fraction.optional(),
      obtained,
    }),
  ),
});

const gasNamed = z.enum(['air', 'O2', 'N2', 'He']);
export const gasDensitySchema = z.strictObject({
  ...head,
  tolerances: tolerances('density', 'quoted'),
  quoted: z.array(z.strictObject({ gas: z.literal('air'), depthM: positive, gramsPerL: positive, obtained })),
  advised: z.strictObject({ recommendedMaxGramsPerL: positive, absoluteMaxGramsPerL: positive, obtained }),
  carbonDioxide: z.strictObject({ gramsPerL: positive, text: said, obtained }),
  densities: z.array(
    z.strictObject({ gas: gasNamed, gramsPerL: positive, temperatureC: z.number(), pressureBar: positive, obtained }),
  ),
  narcosis: z.array(remark),
});

export const compressibilitySchema = z
  .strictObject({
    ...head,
    tolerances: tolerances('printed', 'mixture'),
    /** The pressures of every row's `z`, bar absolute. */
    pressuresBar: z.array(positive),
    grid: z.array(z.strictObject({ gas: gasNamed, temperatureK: positive, z: z.array(positive), obtained })),
    printed: z.array(
      z.strictObject({ gas: gasNamed, temperatureK: positive, pressureBar: positive, z: positive, obtained }),
    ),
  })
  .refine(
    (file) => file.grid.every((row) => row.z.length === file.pressuresBar.length),
    'a row has a value for every pressure',
  );

const historicModelsSchema = z.strictObject({
  ...head,
  tolerances: tolerances('feetToMetres'),
  haldane: z.strictObject({
    halfTimesMin: z.array(positive),
    totalPressureRatio: positive,
    nitrogenRatio: positive,
    obtained,
    text: said,
  }),
  usNavy: z.strictObject({ halfTimesMin: z.array(positive), obtained }),
  workman: z.array(
    z.strictObject({
      halfTimeMin: positive,
      surfacingMsw: positive,
      slope: positive,
      surfacingFsw: positive,
      obtained: z.strictObject({
        halfTimeMin: obtained,
        surfacingMsw: obtained,
        slope: obtained,
        surfacingFsw: obtained,
      }),
    }),
  ),
});

const triedSchedule = z.strictObject({
  cases: z.number().int().min(0),
  dives: z.number().int().positive(),
  stops: z.array(z.strictObject({ depthFsw: positive, minutes: positive })).min(1),
});
const finding = z.strictObject({ by: said, text: said, obtained });
const trialsSchema = z.strictObject({
  ...head,
  tolerances: none,
  stopTrial: z.strictObject({
    ...finding.shape,
    depthFsw: positive,
    bottomMin: positive,
    waterC: z.number(),
    descentFtMin: positive,
    ascentFtMin: positive,
    shallow: triedSchedule,
    deep: triedSchedule,
  }),
  findings: z.array(finding),
});

const uddfSchema = z.strictObject({ ...head, tolerances: none, facts: z.array(remark) });

export const commonPracticeSchema = z.strictObject({
  ...head,
  tolerances: tolerances('noStop', 'shortDeepDive'),
  limits: z.array(z.strictObject({ low: fraction, high: fraction })).min(1),
  noStopAfterDescent: z.strictObject({
    obtained,
    text: said,
    legs: z.array(z.strictObject({ toM: positive, durationS: positive })),
    fromMin: positive,
    toMin: positive,
  }),
  shortDeepDive: z.strictObject({
    obtained,
    text: said,
    /** One way to make the dive the text tells of; its times add up to the whole. */
    legs: z.array(z.strictObject({ toM: z.number().min(0), durationS: positive })),
  }),
});

/** Every file beside this one and the schema it keeps to. */
export const SCHEMA_OF_FILE = {
  'ascent-rates.json': ascentRatesSchema,
  'atmosphere.json': atmosphereSchema,
  'boyle.json': boyleSchema,
  'common-practice.json': commonPracticeSchema,
  'compressibility.json': compressibilitySchema,
  'flying.json': flyingSchema,
  'gas-density.json': gasDensitySchema,
  'gas-depths.json': gasDepthsSchema,
  'gradient-factors.json': gradientFactorsSchema,
  'historic-models.json': historicModelsSchema,
  'loading.json': loadingSchema,
  'm-values.json': mValuesSchema,
  'no-stop-1986.json': noStop1986Schema,
  'no-stop-us-navy.json': navyNoStopSchema,
  'oxygen.json': oxygenSchema,
  'trials.json': trialsSchema,
  'uddf.json': uddfSchema,
  'water.json': waterSchema,
  'zhl16.json': zhl16Schema,
} as const;
