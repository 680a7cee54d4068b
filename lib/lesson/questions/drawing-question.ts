import type { DrawAnswer } from './answer';
import { attempted, evaluateAmount, evaluateAs, wording, type Evaluated } from '../expression/evaluate';
import type { Expression, FactCall, WrittenMoment } from '../expression/expression';
import { momentS } from '../facts/fact-value';
import { factNamed } from '../facts/facts';
import { parseExpression, parseMoment } from '../expression/parse-expression';
import { printValue } from '../expression/print-value';
import { formOf } from '../expression/template';
import type { DrawAsked, SketchPoint } from './sketch';
import type { UnitSystem } from '../../quantity/unit-system';
import type { World } from '../expression/world';

const TRUTH_POINTS = 160;
/** Works out what a question asks to be drawn; it is named in the units given. */
export function drawAsked(question: DrawAnswer, world: World, system: UnitSystem = 'metric'): Evaluated<DrawAsked> {
  const curve = parseExpression(question.curve);
  const upTo = parseExpression(question.upTo);
  const within = parseExpression(question.within);
  if (!curve.ok) return wording(curve.what, curve.mend);
  if (!upTo.ok) return wording(upTo.what, upTo.mend);
  if (!within.ok) return wording(within.what, within.mend);
  const call = curveOf(curve.value);
  if (!call)
    return wording(
      'This is not a fact that has a value at every moment.',
      'Write one such as noStopMin, ceilingM or tensionBar(1), without a moment.',
    );
  const [from, to] = [momentOf(question.from, world), momentOf(question.to, world)];
  if (!from.ok) return from;
  if (!to.ok) return to;
  if (!(to.value > from.value)) return wording('The curve ends before it begins.', 'Write a later moment in to.');
  const { dimension, noun } = factNamed(call.name)!;
  const top = evaluateAs(upTo.value, world, dimension);
  if (!top.ok) return top;
  if (!(top.value > 0) || !Number.isFinite(top.value))
    return wording('The axis has no height.', 'Write how far it reaches, such as 60 min.');
  const close = evaluateAs(within.value, world, dimension);
  if (!close.ok) return close;
  const boxesS = boxesOf(question, from.value, to.value, world);
  if (!boxesS.ok) return boxesS;
  const since = question.from.trim() === 'surfacing' ? 'surfacing' : undefined;
  const truth: SketchPoint[] = [];
  for (let i = 0; i <= TRUTH_POINTS; i += 1) {
    const timeS = from.value + ((to.value - from.value) * i) / TRUTH_POINTS;
    const amount = evaluateAmount({ ...call, at: timeOf(timeS) }, world);
    if (!amount.ok) return amount;
    truth.push({ timeS, value: Math.min(Math.max(0, amount.value.value), top.value) });
  }
  return {
    ok: true,
    value: {
      fromS: from.value,
      toS: to.value,
      dimension,
      upTo: top.value,
      zeroS: since === undefined ? 0 : from.value,
      since,
      boxesS: boxesS.value,
      within: close.value,
      noun: noun.replace(/ ?\{1\}/, argumentOf(call, system)),
      format: formOf(call),
      truth,
    },
  };
}

const [FEWEST_BOXES, MOST_BOXES] = [5, 9];
/** Boxes nearer to each other than this share of the axis are one. */
const NEAREST_SHARE = 0.02;

/** The moments of the boxes: those named, or the ends and where the dive bends, with the widest gaps between halved. */
function boxesOf({ boxes }: DrawAnswer, fromS: number, toS: number, world: World): Evaluated<readonly number[]> {
  const nearest = (toS - fromS) * NEAREST_SHARE;
  const chosen = [fromS, toS];
  const add = (timeS: number) => {
    if (timeS > fromS && timeS < toS && chosen.every((one) => Math.abs(one - timeS) > nearest)) chosen.push(timeS);
  };
  for (const moment of boxes ?? []) {
    const timeS = momentOf(moment, world);
    if (!timeS.ok) return timeS;
    add(timeS.value);
  }
  if (!boxes) {
    for (const { endS } of world.subject.truth.timeline.legs) if (chosen.length < MOST_BOXES) add(endS);
    while (chosen.length < FEWEST_BOXES) {
      const inOrder = [...chosen].sort((one, other) => one - other);
      const widest = inOrder.slice(1).reduce(
        (most, timeS, i) => {
          const gap = timeS - inOrder[i]!;
          return gap > most.gap ? { gap, middleS: inOrder[i]! + gap / 2 } : most;
        },
        { gap: 0, middleS: fromS },
      );
      chosen.push(Math.round(widest.middleS));
    }
  }
  return { ok: true, value: chosen.sort((one, other) => one - other) };
}

function argumentOf(call: FactCall, system: UnitSystem): string {
  const [first] = call.arguments;
  return first?.is === 'amount' ? ` ${printValue(first, system)}` : '';
}

/** A fact with a value at every moment, not yet asked for at one. */
function curveOf(expression: Expression): FactCall | undefined {
  if (expression.is !== 'fact' && expression.is !== 'name') return undefined;
  const fact = factNamed(expression.name);
  if (fact?.of !== 'moment' || fact.dear) return undefined;
  const call: FactCall =
    expression.is === 'fact'
      ? expression
      : {
          is: 'fact',
          name: expression.name,
          arguments: [],
          at: undefined,
          extreme: undefined,
          dive: undefined,
          script: undefined,
          unit: undefined,
          place: expression.place,
        };
  return call.at || call.extreme ? undefined : call;
}

function timeOf(timeS: number): WrittenMoment {
  return {
    is: 'time',
    minutes: { is: 'amount', value: timeS / 60, dimension: 'time', bare: false, place: [0, 0] },
    place: [0, 0],
  };
}

/** When a moment written alone is, s since the script began. */
export function momentOf(source: string, world: World): Evaluated<number> {
  const parsed = parseMoment(source);
  if (!parsed.ok) return { ...parsed, cause: 'wording' };
  const { moment, dive } = parsed.value;
  return attempted(() => momentS(moment, { dive }, world.subject, world));
}
