import {
  CONFIDENCES,
  type Answer,
  type CheckAnswer,
  type Draft,
  type LessonProgress,
  type Predicted,
  type Prediction,
  type Progress,
  type Tried,
} from './progress';
import type { SketchPoint } from './questions/sketch';
import { RENAMED } from './renamed';

const MOST_REASON = 2000;
const MOST_TEXT = 200;
const MOST_SCRIPT = 20_000;
const MOST_GIVEN = 50;
const MOST_POINTS = 400;

/**
 * Progress from a record of unknown making: what can be used of it, piece by piece. Records from before answers were kept
 * apart are taken over: what was called done counts as seen, and the one answer there was as the first. Never throws.
 */
export function readProgress(record: unknown): Progress {
  const lessons: Record<string, LessonProgress> = {};
  for (const [name, own] of entriesOf(fieldOf(record, 'lessons'))) {
    if (!/^[a-z0-9-]{1,80}$/.test(name)) continue;
    const slug = Object.hasOwn(RENAMED, name) ? RENAMED[name]! : name;
    const at = fieldOf(own, 'at');
    const seen = fieldOf(own, 'seen') ?? fieldOf(own, 'done');
    lessons[slug] = {
      at: typeof at === 'string' ? at : undefined,
      seen: Array.isArray(seen) ? seen.filter((step): step is string => typeof step === 'string').slice(0, 100) : [],
      predictions: readEach(fieldOf(own, 'predictions'), readPredicted),
      tries: { ...readEach(fieldOf(own, 'met'), metBefore), ...readEach(fieldOf(own, 'tries'), readTried) },
      checks: readEach(fieldOf(own, 'checks'), readCheck),
      drafts: readEach(fieldOf(own, 'drafts'), readDraft),
    };
  }
  return { lessons };
}

/** The value under a name, where there is one. */
export function fieldOf(value: unknown, name: string | number): unknown {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, name)
    ? (value as Record<string | number, unknown>)[name]
    : undefined;
}

function entriesOf(value: unknown): [string, unknown][] {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.entries(value).slice(0, 200)
    : [];
}

function readEach<T>(value: unknown, read: (one: unknown) => T | undefined): Record<string, T> {
  return Object.fromEntries(
    entriesOf(value).flatMap(([key, one]): [string, T][] => {
      const made = read(one);
      return made === undefined ? [] : [[key, made]];
    }),
  );
}

function readPredicted(value: unknown): Predicted | undefined {
  const given = fieldOf(value, 'given');
  if (!Array.isArray(given)) {
    const only = readPrediction(value);
    return only && { given: [only], looked: false, again: false };
  }
  const predictions = given.slice(0, MOST_GIVEN).flatMap((one) => readPrediction(one) ?? []);
  const looked = fieldOf(value, 'looked') === true;
  if (predictions.length === 0 && !looked) return undefined;
  return { given: predictions, looked, again: fieldOf(value, 'again') === true };
}

function readPrediction(value: unknown): Prediction | undefined {
  const answer = readAnswer(fieldOf(value, 'answer'));
  const confidence = readConfidence(value);
  const reason = fieldOf(value, 'reason');
  const right = fieldOf(value, 'right');
  if (!answer || !confidence || typeof reason !== 'string' || typeof right !== 'boolean') return undefined;
  return {
    answer,
    confidence,
    reason: reason.slice(0, MOST_REASON),
    right,
    knowing: fieldOf(value, 'knowing') === true,
  };
}

function readConfidence(value: unknown) {
  return CONFIDENCES.find((one) => one === fieldOf(value, 'confidence'));
}

function readAnswer(value: unknown): Answer | undefined {
  const by = fieldOf(value, 'by');
  const option = fieldOf(value, 'option');
  const number = fieldOf(value, 'value');
  const sketch = fieldOf(value, 'sketch');
  if (by === 'choice' && isNumber(option)) return { by, option };
  if (by === 'number' && isNumber(number)) return { by, value: number };
  if (by !== 'draw' || !Array.isArray(sketch)) return undefined;
  const points = sketch
    .slice(0, MOST_POINTS)
    .map((point) => ({ timeS: fieldOf(point, 'timeS'), value: fieldOf(point, 'value') }));
  return points.every((point): point is SketchPoint => isNumber(point.timeS) && isNumber(point.value))
    ? { by, sketch: points }
    : undefined;
}

/** A goal met, as it was kept before: the dive alone. */
function metBefore(value: unknown): Tried | undefined {
  return typeof value === 'string' ? { met: value.slice(0, MOST_SCRIPT), looked: false } : undefined;
}

function readTried(value: unknown): Tried | undefined {
  const met = fieldOf(value, 'met');
  const looked = fieldOf(value, 'looked') === true;
  if (typeof met !== 'string' && !looked) return undefined;
  return { met: typeof met === 'string' ? met.slice(0, MOST_SCRIPT) : undefined, looked };
}

function readCheck(value: unknown): CheckAnswer | undefined {
  const [seed, tries, rights] = [fieldOf(value, 'seed'), fieldOf(value, 'tries'), fieldOf(value, 'rights')];
  const right = fieldOf(value, 'right');
  const firstRight = fieldOf(value, 'firstRight');
  return isNumber(seed) && isNumber(tries) && isNumber(rights) && typeof right === 'boolean'
    ? { seed, tries, rights, right, firstRight: typeof firstRight === 'boolean' ? firstRight : undefined }
    : undefined;
}

function readDraft(value: unknown): Draft | undefined {
  const answer = readAnswer(fieldOf(value, 'answer'));
  const text = textOf(fieldOf(value, 'text'), MOST_TEXT);
  const reason = textOf(fieldOf(value, 'reason'), MOST_REASON);
  const confidence = readConfidence(value);
  const seed = fieldOf(value, 'seed');
  const script = textOf(fieldOf(value, 'script'), MOST_SCRIPT);
  const draft: Draft = {
    ...(answer && { answer }),
    ...(text !== undefined && { text }),
    ...(reason !== undefined && { reason }),
    ...(confidence && { confidence }),
    ...(isNumber(seed) && { seed }),
    ...(script !== undefined && { script }),
  };
  return Object.keys(draft).length === 0 ? undefined : draft;
}

function textOf(value: unknown, most: number): string | undefined {
  return typeof value === 'string' ? value.slice(0, most) : undefined;
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}
