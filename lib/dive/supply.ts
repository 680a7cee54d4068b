import * as z from 'zod';
import {
  BREATHING_RANGE_L_MIN,
  CYLINDER_RANGE_L,
  FILL_RANGE_BAR,
  LONGEST_CYLINDER_NAME,
  MOST_CYLINDERS,
  STRESS_FACTOR_RANGE,
} from './bounds';
import { gasSchema } from './gas-schema';

const breathing = z.number().min(BREATHING_RANGE_L_MIN[0]).max(BREATHING_RANGE_L_MIN[1]);
const fill = z.number().min(FILL_RANGE_BAR[0]).max(FILL_RANGE_BAR[1]);

/** A cylinder, or several on one valve, as the dive begins. Pressures are what a gauge shows. */
const cylinderSchema = z
  .object({
    name: z
      .string()
      .trim()
      .max(LONGEST_CYLINDER_NAME)
      .regex(/^[^,;#\r\n]+$/, 'a name is written without a comma, semicolon or #'),
    /** What it holds of water, L. */
    waterL: z.number().min(CYLINDER_RANGE_L[0]).max(CYLINDER_RANGE_L[1]),
    /** What it may be filled to, bar. */
    workingBar: fill,
    /** What it is filled to, bar. */
    startBar: fill,
    gas: gasSchema,
  })
  .refine((one) => one.startBar <= one.workingBar, 'the cylinder is filled beyond its working pressure');

/** What the diver breathes at the surface in a minute, L; a phase left out is breathed through like the bottom. */
const consumptionSchema = z.object({
  bottomLMin: breathing.optional(),
  descentLMin: breathing.optional(),
  ascentLMin: breathing.optional(),
  stopsLMin: breathing.optional(),
});

/** What the diver carries to breathe, and how fast they breathe it; all of it may be left out. */
export const supplySchema = z.object({
  cylinders: z
    .array(cylinderSchema)
    .max(MOST_CYLINDERS)
    .refine((all) => new Set(all.map(({ name }) => name)).size === all.length, 'two cylinders have the same name'),
  consumption: consumptionSchema,
  /** How many times faster a frightened or working diver breathes. */
  stressFactor: z.number().min(STRESS_FACTOR_RANGE[0]).max(STRESS_FACTOR_RANGE[1]).optional(),
});

export type Cylinder = z.infer<typeof cylinderSchema>;
export type Consumption = z.infer<typeof consumptionSchema>;
export type Supply = z.infer<typeof supplySchema>;
