import { printClock } from '../quantity/duration';
import type { UnitSystem } from '../quantity/unit-system';
import type { DrawAnswer } from './answer';
import { attempted, evaluateAmount, evaluateAs, type Evaluated } from './evaluate';
import type { Dimension } from './dimension';
import type { Expression, FactCall, Moment } from './expression';
import { momentS } from './fact-value';
import { factNamed } from './facts';
import { refused } from '../quantity/parsed';
import { parseExpression, parseMoment } from './parse-expression';
import { printValue } from './print-value';
import type { World } from './world';

/** A curve a learner has drawn: values at run times, straight between them. */
export type Sketch = readonly SketchPoint[];

export interface SketchPoint {
  readonly timeS: number;
  readonly value: number;
}

/** The axes a curve is drawn on, and the true curve, sampled. */
export interface DrawAsked {
  readonly fromS: number;
  readonly toS: number;
  readonly dimension: Dimension;
  readonly upTo: number;
  readonly within: number;
  /** What is drawn, as a noun: "the no-stop time". */
  readonly noun: string;
  readonly format: string | undefined;
  /** The true curve, no higher than the axis. */
  readonly truth: Sketch;
}

const TRUTH_POINTS = 160;
/** How many points the keyboard offers, evenly spaced. */
export const KEYBOARD_POINTS = 5;

/** Works out what a question asks to be drawn. */
export function drawAsked(question: DrawAnswer, world: World): Evaluated<DrawAsked> {
  const curve = parseExpression(question.curve);
  const upTo = parseExpression(question.upTo);
  const within = parseExpression(question.within);
  if (!curve.ok) return wording(curve.what, curve.mend);
  if (!upTo.ok) return wording(upTo.what, upTo.mend);
  if (!within.ok) return wording(within.what, within.mend);
  const call = curveOf(curve.value);
  if (!call) return wording('This is not a fact that has a value at every moment.', 'Write one such as noStopMin, ceilingM or tensionBar(1), without a moment.');
  const [from, to] = [momentOf(question.from, world), momentOf(question.to, world)];
  if (!from.ok) return from;
  if (!to.ok) return to;
  if (!(to.value > from.value)) return wording('The curve ends before it begins.', 'Write a later moment in to.');
  const { dimension, noun, format } = factNamed(call.name)!;
  const top = evaluateAs(upTo.value, world, dimension);
  if (!top.ok) return top;
  if (!(top.value > 0) || !Number.isFinite(top.value)) return wording('The axis has no height.', 'Write how far it reaches, such as 60 min.');
  const close = evaluateAs(within.value, world, dimension);
  if (!close.ok) return close;
  const truth: SketchPoint[] = [];
  for (let i = 0; i <= TRUTH_POINTS; i += 1) {
    const timeS = from.value + ((to.value - from.value) * i) / TRUTH_POINTS;
    const amount = evaluateAmount({ ...call, at: timeOf(timeS) }, world);
    if (!amount.ok) return amount;
    truth.push({ timeS, value: Math.min(Math.max(0, amount.value.value), top.value) });
  }
  return { ok: true, value: { fromS: from.value, toS: to.value, dimension, upTo: top.value, within: close.value, noun: noun.replace(/ ?\{1\}/, argumentOf(call)), format, truth } };
}

function wording(what: string, mend: string): Extract<Evaluated<never>, { ok: false }> {
  return { ...refused(what, mend), cause: 'wording' };
}

function argumentOf(call: FactCall): string {
  const [first] = call.arguments;
  return first?.is === 'amount' ? ` ${printValue(first, 'metric')}` : '';
}

/** A fact with a value at every moment, not yet asked for at one. */
function curveOf(expression: Expression): FactCall | undefined {
  if (expression.is !== 'fact' && expression.is !== 'name') return undefined;
  const fact = factNamed(expression.name);
  if (fact?.of !== 'moment' || fact.dear) return undefined;
  const call: FactCall = expression.is === 'fact' ? expression : { is: 'fact', name: expression.name, arguments: [], at: undefined, extreme: undefined, dive: undefined, script: undefined, unit: undefined, place: expression.place };
  return call.at || call.extreme ? undefined : call;
}

function timeOf(timeS: number): Moment {
  return { is: 'time', minutes: { is: 'amount', value: timeS / 60, dimension: 'time', bare: false, place: [0, 0] }, place: [0, 0] };
}

/** When a moment written alone is, s since the script began. */
export function momentOf(source: string, world: World): Evaluated<number> {
  const parsed = parseMoment(source);
  if (!parsed.ok) return { ...parsed, cause: 'wording' };
  const { moment, dive } = parsed.value;
  return attempted(() => momentS(moment, { dive }, world.subject, world));
}

/** The value of a sketch at a run time; level before its first and after its last point. */
export function sketchAt(sketch: Sketch, timeS: number): number {
  const after = sketch.findIndex((point) => point.timeS >= timeS);
  if (after < 0) return sketch.at(-1)?.value ?? 0;
  if (after === 0) return sketch[0]!.value;
  const [one, other] = [sketch[after - 1]!, sketch[after]!];
  const span = other.timeS - one.timeS;
  return span <= 0 ? other.value : one.value + ((other.value - one.value) * (timeS - one.timeS)) / span;
}

/** How a sketch lies beside the truth. */
export interface SketchCompared {
  /** The share of the time it is close, 0–1. */
  readonly closeShare: number;
  readonly close: boolean;
  /** One plain sentence or two. */
  readonly text: string;
}

/** A sketch that is close for so much of the time is close. */
const CLOSE_SHARE = 0.8;

export function compareSketch(sketch: Sketch, { truth, within, dimension, noun, format }: DrawAsked, system: UnitSystem): SketchCompared {
  const differences = truth.map(({ timeS, value }) => ({ timeS, off: sketchAt(sketch, timeS) - value, truth: value }));
  const closeShare = differences.filter(({ off }) => Math.abs(off) <= within).length / differences.length;
  const worst = differences.reduce((most, one) => (Math.abs(one.off) > Math.abs(most.off) ? one : most));
  const print = (value: number) => printValue({ value, dimension }, system, format);
  const close = closeShare >= CLOSE_SHARE;
  const side = worst.off > 0 ? 'too high' : 'too low';
  const furthest = `You are furthest off at ${printClock(worst.timeS)}: you drew ${print(worst.truth + worst.off)}, and ${noun} is ${print(worst.truth)} there.`;
  if (closeShare === 1) return { closeShare, close, text: `Your curve is close all the way, within ${print(within)} of ${noun}.` };
  if (close) return { closeShare, close, text: `Your curve is close for most of the way. ${furthest}` };
  const high = differences.filter(({ off }) => off > within).length / differences.length;
  const low = differences.filter(({ off }) => off < -within).length / differences.length;
  if (high > 0.6 || low > 0.6) return { closeShare, close, text: `You drew it ${side} most of the way. ${furthest}` };
  const lead = high > 0.15 && low > 0.15 ? turnText(differences, within) : `You drew it ${high > low ? 'too high' : 'too low'} part of the way.`;
  return { closeShare, close, text: `${lead} ${furthest}` };
}

function turnText(differences: readonly { readonly off: number }[], within: number): string {
  const first = differences.find(({ off }) => Math.abs(off) > within)!.off;
  return first > 0 ? 'You drew it too high at first and too low later.' : 'You drew it too low at first and too high later.';
}
