import * as z from 'zod';
import { FREEDOMS } from './questions/kept-settings';
import {
  choiceSchema,
  drawSchema,
  expressionText,
  numberSchema,
  pickSchema,
  prose,
  replySchema,
  sentence,
} from './questions/answer';

const id = z.string().regex(/^[a-z][a-z0-9-]{1,39}$/);
const name = z.string().max(40);
export const scriptText = z.string().min(1).max(20_000);

/** Beside a step, for whoever teaches it. */
const notesSchema = z.strictObject({
  /** What to ask the class. */
  ask: z.array(sentence).max(6).default([]),
  /** Common wrong answers and why they tempt. */
  wrong: z
    .array(z.strictObject({ answer: sentence, tempts: sentence }))
    .max(6)
    .default([]),
  /** Anything else: what to point at, how long to wait. */
  tip: sentence.optional(),
});

const common = {
  id,
  title: z.string().trim().min(1).max(90),
  text: prose,
  /** What is folded away under the text, for whoever wants more. */
  more: prose.optional(),
  /** What must be true for the text to be true; held by the tests. */
  claims: z.array(expressionText).max(12).default([]),
  notes: notesSchema.optional(),
};

/** Pictures of the desk by their names, in order. */
const show = z.array(name).min(1).max(3);

const readSchema = z.strictObject({
  ...common,
  kind: z.literal('read'),
  /** A dive to look at beside the text, standing at a moment. */
  look: z.strictObject({ script: name.optional(), show, at: expressionText.default('start') }).optional(),
});

/** Exactly one of the three ways to predict. */
const predictSchema = z.strictObject({
  ...common,
  kind: z.literal('predict'),
  script: name.optional(),
  choice: choiceSchema.optional(),
  number: numberSchema.optional(),
  draw: drawSchema.optional(),
  /** What may be told before the answer, because the question builds on it: a point of a curve, a rule that was taught. */
  given: z.array(expressionText).max(4).default([]),
  /** Read once the prediction lies beside what the engine says. */
  after: prose,
});

const runSchema = z.strictObject({
  ...common,
  kind: z.literal('run'),
  script: name.optional(),
  show,
  /** Readings on show; all when left out. */
  readings: z.array(name).max(12).optional(),
  from: expressionText.default('start'),
  to: expressionText.default('end'),
  /** Moments at which the run waits and something is said. */
  watch: z
    .array(z.strictObject({ at: expressionText, text: sentence }))
    .max(12)
    .default([]),
});

const explainSchema = z.strictObject({
  ...common,
  kind: z.literal('explain'),
  script: name.optional(),
  /** The reading whose working is opened, and the moment. */
  reading: name,
  at: expressionText,
});

const trySchema = z.strictObject({
  ...common,
  kind: z.literal('try'),
  /** The script the learner begins with. */
  script: name.optional(),
  show,
  goal: expressionText,
  /** What else than its steps may be changed about the dive; the rest has to stay as it was. */
  free: z.array(z.enum(FREEDOMS)).default([]),
  /** Said while the goal is not met and the condition holds; otherwise what is missing is said from the goal itself. */
  hints: z.array(replySchema).max(6).default([]),
  /** A script that meets the goal: shown as one way to do it, and checked. */
  reach: scriptText,
  after: prose.optional(),
});

/** Values drawn afresh for a question: evenly spaced from one amount to another, or one of a list. */
const drawnSchema = z.union([
  z.strictObject({ from: expressionText, to: expressionText, step: expressionText }),
  z.strictObject({ of: z.array(expressionText).min(2).max(30) }),
]);

export const questionSchema = z.strictObject({
  id,
  /** Values by name; they stand in `script` as `{name}`, in texts as `{{name}}` and in expressions as `name`. */
  draws: z.record(z.string().regex(/^[a-z][A-Za-z0-9]{0,19}$/), drawnSchema).default({}),
  /** The question's own dive; without it, facts are about the step's script. */
  script: scriptText.optional(),
  ask: prose,
  choice: choiceSchema.optional(),
  number: numberSchema.optional(),
  pick: pickSchema.optional(),
  /** Read after the answer, right or wrong. */
  after: prose.optional(),
});

const checkSchema = z.strictObject({
  ...common,
  kind: z.literal('check'),
  script: name.optional(),
  questions: z.array(questionSchema).min(1).max(8),
});

const recapSchema = z.strictObject({
  ...common,
  kind: z.literal('recap'),
  points: z.array(sentence).min(1).max(8),
});

export const stepSchema = z.discriminatedUnion('kind', [
  readSchema,
  predictSchema,
  runSchema,
  explainSchema,
  trySchema,
  checkSchema,
  recapSchema,
]);

export const STEP_KINDS = ['read', 'predict', 'run', 'explain', 'try', 'check', 'recap'] as const;
export type LessonStep = z.infer<typeof stepSchema>;
export type StepKind = LessonStep['kind'];
export type StepOf<Kind extends StepKind> = Extract<LessonStep, { kind: Kind }>;
export type Question = z.infer<typeof questionSchema>;
export type Drawn = z.infer<typeof drawnSchema>;
