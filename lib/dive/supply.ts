import * as z from 'zod';
import { gasSchema } from './gas-schema';

/** Largest water volume of one supply, L: four large cylinders on one valve. */
export const LARGEST_CYLINDER_L = 100;
/** Highest pressure a cylinder may be filled to, bar on the gauge. */
export const HIGHEST_FILL_BAR = 450;
/** Fastest breathing taken, L/min: far beyond what anyone keeps up. */
export const FASTEST_BREATHING_L_MIN = 200;
export const MOST_CYLINDERS = 12;
export const LONGEST_CYLINDER_NAME = 30;
export const STRESS_FACTOR_RANGE = [1, 5] as const;

const breathing = z.number().positive().max(FASTEST_BREATHING_L_MIN);
const fill = z.number().positive().max(HIGHEST_FILL_BAR);

/** A cylinder, or several on one valve, as the dive begins. Pressures are what a gauge shows. */
export const cylinderSchema = z
  .object({
    name: z
      .string()
      .trim()
      .max(LONGEST_CYLINDER_NAME)
      .regex(/^[^,;#\r\n]+$/, 'a name is written without a comma, semicolon or #'),
    /** What it holds of water, L. */
    waterL: z.number().positive().max(LARGEST_CYLINDER_L),
    /** What it may be filled to, bar. */
    workingBar: fill,
    /** What it is filled to, bar. */
    startBar: fill,
    gas: gasSchema,
  })
  .refine((one) => one.startBar <= one.workingBar, 'the cylinder is filled beyond its working pressure');

/** What the diver breathes at the surface in a minute, L; a phase left out is breathed through like the bottom. */
export const consumptionSchema = z.object({
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
