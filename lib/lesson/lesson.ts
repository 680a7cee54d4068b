import * as z from 'zod';
import { prose, sentence } from './questions/answer';
import { scriptText, stepSchema } from './step';

/**
 * A lesson as data. It carries dives, and steps that ask, run, explain and check them; every number in it is worked out
 * by the engine. What it means is held to more than this shape: see check-lesson.ts.
 */

export const LEVELS = ['first steps', 'further', 'instruments', 'deep course'] as const;
export type Level = (typeof LEVELS)[number];

/** A dive of the lesson: its script, and rules of the units that watch it where they differ from the defaults. */
const lessonScriptSchema = z.strictObject({
  title: z.string().trim().min(1).max(90),
  script: scriptText,
  /** Partial rule settings, such as `imposedStop: { on: true }`; see `ruleSettingsSchema` in lib/rules/rule-settings.ts. */
  rules: z.record(z.string(), z.unknown()).optional(),
});

export const lessonSchema = z.strictObject({
  /** Its place on the shelf; a lesson from the workshop has none. */
  number: z.number().int().min(1).max(99).optional(),
  title: z.string().trim().min(1).max(80),
  /** One line for the shelf. */
  summary: z.string().trim().min(1).max(200),
  level: z.enum(LEVELS),
  minutes: z.number().int().min(1).max(180),
  /** Numbers of the lessons that come before it. */
  after: z.array(z.number().int().min(1).max(99)).max(6).default([]),
  /** What one should know or have at hand. */
  needs: z.array(sentence).max(6).default([]),
  objectives: z.array(sentence).min(1).max(6),
  /** Cautions by name (content/cautions.ts); the general one is shown anyway. */
  cautions: z.array(z.string().max(40)).max(4).default([]),
  /** Dives by name; the first is the one meant where none is named. */
  scripts: z
    .record(z.string().regex(/^[a-z][a-z0-9]{0,19}$/), lessonScriptSchema)
    .refine((all) => Object.keys(all).length >= 1, 'a lesson needs at least one script')
    .refine((all) => Object.keys(all).length <= 12, 'a lesson has at most twelve scripts'),
  /**
   * Whether the lesson has round figures of its own in feet; without it, its dives are shown as they are. Figures and
   * words that are not the round ones nearest stand here: `33 m: 108 ft`.
   */
  inFeet: z.record(z.string().trim().min(1).max(60), z.string().trim().min(1).max(60)).optional(),
  /** Read before the first step by those who read only. */
  opening: prose.optional(),
  steps: z.array(stepSchema).min(1).max(40),
});

export type Lesson = z.infer<typeof lessonSchema>;
export type LessonScript = z.infer<typeof lessonScriptSchema>;

/** The longest lesson that is read, characters. */
export const LONGEST_LESSON = 120_000;
