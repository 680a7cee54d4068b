import * as z from 'zod';
import { ALTITUDE_RANGE_M } from '../physics/atmosphere';
import { DEEPEST_M, LONGEST_S, MOST_SETUPS, SHORTEST_S } from './bounds';
import { checker } from './checker';
import { gasSchema } from './gas-schema';
import { schemasOf } from './script/settings/setting';
import { FIELDS } from './script/settings/fields';
import { setupSchema } from './setup';
import { supplySchema } from './supply';

/**
 * A dive as plain data: where it is, what the diver breathes and how the depth changes. Metres, seconds, bar, fractions.
 * It is what a script means; `script.ts` turns text into it and back.
 */

const depthM = z.number().min(0).max(DEEPEST_M);
const spanS = z.number().min(SHORTEST_S).max(LONGEST_S);

/** One step of the dive. A change of depth keeps whichever of rate and time the script gave; the other follows. */
const stepSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('descend'), toM: depthM, durationS: spanS }),
  z.object({ kind: z.literal('ascend'), toM: depthM, durationS: spanS }),
  z.object({ kind: z.literal('stay'), durationS: spanS }),
  z.object({ kind: z.literal('switch'), gas: gasSchema }),
  z.object({ kind: z.literal('interval'), durationS: spanS }),
]);

const altitudeM = z.number().min(ALTITUDE_RANGE_M[0]).max(ALTITUDE_RANGE_M[1]);

/** What the diver's tissues hold when the script begins. */
const startSchema = z.discriminatedUnion('kind', [
  /** Saturated with air at this altitude. */
  z.object({ kind: z.literal('adapted'), altitudeM }),
  /** Saturated at another altitude and brought to the site this long ago. */
  z.object({ kind: z.literal('arrived'), fromM: altitudeM, agoS: z.number().min(0).max(LONGEST_S) }),
  /** Left over from an earlier dive: sixteen tensions of each gas, bar. */
  z.object({
    kind: z.literal('tensions'),
    nitrogenBar: z.array(z.number().min(0)).length(16),
    heliumBar: z.array(z.number().min(0)).length(16),
  }),
]);

const { model, plan, ...single } = FIELDS;

export const settingsSchema = z.object({
  ...schemasOf(single, checker),
  altitudeM,
  start: startSchema,
  model: z.object(schemasOf(model, checker)),
  /** Gases the plan may switch to on the way up, each from its depth. */
  carried: z.array(z.object({ gas: gasSchema, fromM: depthM })),
  plan: z.object(schemasOf(plan, checker)),
  /** Cylinders and breathing; absent when the script says nothing of them. */
  supply: supplySchema.optional(),
  /** Instruments that watch the dive. A script always has a list of them, other makers of dives may leave it out. */
  setups: z
    .array(setupSchema)
    .max(MOST_SETUPS)
    .refine((all) => new Set(all.map(({ name }) => name)).size === all.length, 'two setups have the same name')
    .optional(),
});

/** One line of a script: its text as typed, and what it stands for. */
const lineSchema = z.object({
  text: z.string(),
  stands: z.discriminatedUnion('as', [
    z.object({ as: z.literal('remark') }),
    z.object({ as: z.literal('setting'), name: z.string() }),
    z.object({ as: z.literal('step'), index: z.number().int().min(0) }),
  ]),
});

export const diveSchema = z.object({
  settings: settingsSchema,
  steps: z.array(stepSchema),
  lines: z.array(lineSchema),
});

export type Step = z.infer<typeof stepSchema>;
export type Start = z.infer<typeof startSchema>;
export type Settings = z.infer<typeof settingsSchema>;
export type ScriptLine = z.infer<typeof lineSchema>;
export type Dive = z.infer<typeof diveSchema>;
/** How much of the model's limits may be used, as fractions: at the first stop, then at the surface. */
export interface GradientFactors {
  low: number;
  high: number;
}
