import * as z from 'zod';
import { WATERS } from '../physics/water';
import { gasSchema } from '../dive/gas-schema';

const gradientFactors = z
  .object({ low: z.number().gt(0).max(1), high: z.number().gt(0).max(1) })
  .refine((gf) => gf.low <= gf.high, 'the low gradient factor is higher than the high one');

/** Lowest and highest surface pressure a bench stands in, bar: a high mountain, and the shore of the Dead Sea. */
export const SURFACE_RANGE_BAR = [0.5, 1.08] as const;
export const DEEPEST_HEAD_M = 3;

const stated = z.number().positive().max(1000).nullable();

/** How the chamber stands and what the person who runs it has stated. Null is "not stated": nothing is put in its place. */
export const benchSettingsSchema = z.strictObject({
  potWater: z.enum(WATERS).prefault('fresh'),
  /** The water whose metres the reference gauge counts; `pot` for that in the pot. */
  gaugeScale: z.enum(['pot', ...WATERS]).prefault('pot'),
  surfaceBar: z.number().min(SURFACE_RANGE_BAR[0]).max(SURFACE_RANGE_BAR[1]).prefault(1.01325),
  /** Water standing over the units, above the level the gauge is connected at, m. */
  headM: z.number().min(0).max(DEEPEST_HEAD_M).prefault(0),
  /** The limits the units may be set to: no-stop times and stops are told as a band from one to the other. */
  strictest: gradientFactors.prefault({ low: 0.85, high: 0.85 }),
  loosest: gradientFactors.prefault({ low: 0.95, high: 0.95 }),
  rateLimit: z.enum(['current', 'buhlmann', 'classic', 'banded']).prefault('current'),
  /** The fastest the pressure may be changed, m/min on the gauge. */
  fastestMMin: stated.prefault(null),
  /** Deviation of depth allowed: so many metres and so many percent of the depth, added. */
  toleranceM: stated.prefault(null),
  tolerancePercent: stated.prefault(null),
  hysteresisM: stated.prefault(null),
  driftM: stated.prefault(null),
});
export type BenchSettings = z.output<typeof benchSettingsSchema>;
export const DEFAULT_BENCH: BenchSettings = benchSettingsSchema.parse({});

/** A unit in the pot, and what it is set to. */
export const benchUnitSchema = z.strictObject({
  id: z.string().min(1).max(40),
  name: z.string().trim().min(1).max(60),
  mode: z.enum(['dive', 'gauge']).prefault('dive'),
  /** The water its depths are counted in. */
  water: z.enum(WATERS).prefault('salt'),
  /** The gas it is set to; as the run's when left out. */
  gas: gasSchema.optional(),
});
export type BenchUnit = z.output<typeof benchUnitSchema>;
export const MOST_UNITS = 8;

/** What may be seen to be wrong with a unit besides its figures. */
export const FAULTS_SEEN = ['error shown', 'dead display', 'water inside', 'alarm silent', 'button stuck'] as const;
export type FaultSeen = (typeof FAULTS_SEEN)[number];

const line = z.string().trim().max(200).prefault('');

/** When and by whom a sheet was filled in, on what, as they wrote it; empty where they did not. */
export const sheetAboutSchema = z.strictObject({
  date: line,
  operator: line,
  chamber: line,
  gauge: line,
  gaugeChecked: line,
  remarks: z.string().trim().max(2000).prefault(''),
});
export type SheetAbout = z.output<typeof sheetAboutSchema>;
export const ABOUT_WORDS: Readonly<Record<keyof SheetAbout, string>> = {
  date: 'Date',
  operator: 'Who runs it',
  chamber: 'Chamber',
  gauge: 'Reference gauge',
  gaugeChecked: 'Gauge last checked',
  remarks: 'Remarks',
};

/** What is written about a sheet, a line each; nothing for what was left empty. */
export function sayAbout(about: SheetAbout): string[] {
  return (Object.keys(ABOUT_WORDS) as (keyof SheetAbout)[])
    .filter((name) => about[name] !== '')
    .map((name) => `${ABOUT_WORDS[name]}: ${about[name]}`);
}

/** What one unit showed at one checkpoint. What is left out has not been read; `nothing` is a display without a figure. */
export const readingSchema = z
  .strictObject({
    depthM: z.union([z.number().min(-10).max(400), z.literal('nothing')]),
    /** Whole minutes; `over` for a unit that shows more than 99. */
    noStopMin: z.union([z.number().min(0).max(999), z.literal('over')]),
    /** Depth of the stop asked for; 0 for none. */
    stopM: z.number().min(0).max(400),
    rateAlarm: z.boolean(),
    safetyStop: z.boolean(),
    noFlyH: z.number().min(0).max(200),
    fault: z.enum(FAULTS_SEEN),
  })
  .partial();
export type Reading = z.output<typeof readingSchema>;

/** Readings by the name of their checkpoint. */
export type Readings = Readonly<Record<string, Reading>>;
