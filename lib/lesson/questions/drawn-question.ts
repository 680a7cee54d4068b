import { parseScript } from '../../dive/script';
import { plainNumber, tidy } from '../../quantity/number';
import { quoted } from '../../quantity/parsed';
import type { RuleSettings } from '../../rules/all';
import { DIMENSION_UNITS } from '../expression/dimension';
import { wording, type Evaluated } from '../expression/evaluate';
import { judgeAmount } from './judge';
import type { LessonWorld } from '../expression/lesson-world';
import { seeded } from '../../quantity/seeded';
import type { Drawn, Question } from '../step';
import { subjectOf } from './subject';
import { withValues, type Amount, type World } from '../expression/world';

/** A question with its values drawn. */
export interface DrawnQuestion {
  readonly values: Readonly<Record<string, Amount>>;
  /** Its own dive with the values in it, if it has one. */
  readonly script: string | undefined;
  readonly world: World;
}

const MOST_VALUES = 200;

/** Every value that may be drawn under one name. */
export function valuesOf(drawn: Drawn, world: World): Evaluated<readonly Amount[]> {
  if ('of' in drawn) {
    const all: Amount[] = [];
    for (const source of drawn.of) {
      const amount = judgeAmount(source, world);
      if (!amount.ok) return amount;
      all.push(amount.value);
    }
    return { ok: true, value: all };
  }
  const [from, to, step] = [
    judgeAmount(drawn.from, world),
    judgeAmount(drawn.to, world),
    judgeAmount(drawn.step, world),
  ];
  if (!from.ok) return from;
  if (!to.ok) return to;
  if (!step.ok) return step;
  const { dimension } = from.value;
  if (to.value.dimension !== dimension || step.value.dimension !== dimension)
    return wording('from, to and step are not of one kind.', 'Write all three in one unit.');
  const count = Math.floor((to.value.value - from.value.value) / step.value.value + 1e-9) + 1;
  if (!(step.value.value > 0) || !(count >= 2))
    return wording('There is nothing to draw from.', 'Write a step above 0, and to further than from.');
  if (count > MOST_VALUES)
    return wording(`There are ${count} values to draw from.`, `Write a larger step, for at most ${MOST_VALUES}.`);
  return {
    ok: true,
    value: Array.from({ length: count }, (_, i) => ({
      value: tidy(from.value.value + i * step.value.value),
      dimension,
    })),
  };
}

/** A question's values by a seed: the same seed, the same values. */
export function drawValues(
  question: Question,
  seed: number,
  lesson: LessonWorld,
  script?: string,
): Evaluated<Readonly<Record<string, Amount>>> {
  const chance = seeded(seed);
  const about = lesson.about(script);
  const values: Record<string, Amount> = {};
  for (const [name, drawn] of Object.entries(question.draws)) {
    const all = valuesOf(drawn, about);
    if (!all.ok) return { ...all, what: `${name}: ${all.what}` };
    values[name] = all.value[Math.floor(chance() * all.value.length)]!;
  }
  return { ok: true, value: values };
}

/** Draws a question by a seed: the same seed, the same question. */
export function drawQuestion(
  question: Question,
  seed: number,
  lesson: LessonWorld,
  script?: string,
): Evaluated<DrawnQuestion> {
  const values = drawValues(question, seed, lesson, script);
  return values.ok ? questionWith(question, values.value, lesson, script) : values;
}

/** A question with given values. */
export function questionWith(
  question: Question,
  values: Readonly<Record<string, Amount>>,
  lesson: LessonWorld,
  script?: string,
): Evaluated<DrawnQuestion> {
  if (question.script === undefined)
    return { ok: true, value: { values, script: undefined, world: withValues(lesson.about(script), values) } };
  const filled = fillScript(question.script, values);
  if (!filled.ok) return filled;
  const own = dive(filled.value, lesson.rulesOf(script));
  if (!own.ok) return own;
  return { ok: true, value: { values, script: filled.value, world: withValues(lesson.aboutDive(own.value), values) } };
}

const PLACE = /\{\s*([A-Za-z][A-Za-z0-9]*)\s*\}/g;

/** A script with its `{name}` replaced by the amounts drawn. */
export function fillScript(script: string, values: Readonly<Record<string, Amount>>): Evaluated<string> {
  const unknown = [...script.matchAll(PLACE)].map((match) => match[1]!).find((name) => !Object.hasOwn(values, name));
  if (unknown !== undefined)
    return wording(
      `The question’s script asks for ${quoted(unknown)}, which is not drawn.`,
      `Draw it: draws: { ${unknown}: { from: 18 m, to: 30 m, step: 3 m } }.`,
    );
  return { ok: true, value: script.replace(PLACE, (_, name: string) => scriptAmount(values[name]!)) };
}

function scriptAmount({ value, dimension }: Amount): string {
  const unit = DIMENSION_UNITS[dimension];
  return `${plainNumber(value)}${unit === '%' || unit === '' ? unit : ` ${unit}`}`;
}

function dive(script: string, rules: RuleSettings): Evaluated<ReturnType<typeof subjectOf>> {
  const parsed = parseScript(script);
  if (parsed.ok) return { ok: true, value: subjectOf(parsed.dive, rules) };
  const [first] = parsed.errors;
  return wording(`The question’s script, line ${first!.line}: ${first!.message}`, first!.mend);
}
