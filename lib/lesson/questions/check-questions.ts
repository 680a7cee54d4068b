import { quoted } from '../../quantity/parsed';
import type { DrawAnswer, NumberAnswer, Option, PickAnswer } from './answer';
import { checkAnswerWords } from '../checking/check-answer-words';
import { checkHeard, hearReplies, type Heard } from '../checking/check-replies';
import { Checker } from '../checking/checker';
import { drawValues, fillScript, questionWith, valuesOf } from './drawn-question';
import { judgeAmount, judgeNumber, numberAsked, numbersToPick, rightOption } from './judge';
import type { LessonWorld } from '../expression/lesson-world';
import { evaluateAmount } from '../expression/evaluate';
import { FORMATS, formatsFor } from '../expression/print-value';
import { parseTemplate } from '../expression/template';
import { drawAsked } from './drawing-question';
import { ignorantSketches, judgeSketch, typedTruth, worldWithSketch } from './judge-sketch';
import type { DrawAsked } from './sketch';
import type { Question, StepOf } from '../step';
import { withValues, type World } from '../expression/world';

type Path = readonly PropertyKey[];

/** A step that predicts: one way to answer, and it has an answer. */
export function checkPredict(step: StepOf<'predict'>, path: Path, world: World, checker: Checker): void {
  oneWay(path, { choice: step.choice, number: step.number, draw: step.draw }, checker);
  if (step.choice) checkChoice(step.choice, [...path, 'choice'], world, checker);
  if (step.number) {
    const before = checker.faults.length;
    const heard = checkNumber(step.number, [...path, 'number'], world, checker);
    if (heard && checker.faults.length === before) checkHeard(step.number, heard, [...path, 'number'], checker);
    checkSaidAgain(step.number, [step.after], path, world, checker);
  }
  if (step.draw) checkDraw(step.draw, [...path, 'draw'], world, checker);
  checker.prose([...path, 'after'], step.after, world);
}

/** A question with drawn values: sound for several draws. */
export function checkQuestion(
  question: Question,
  path: Path,
  worlds: LessonWorld,
  script: string | undefined,
  draws: number,
  checker: Checker,
): void {
  const before = checker.faults.length;
  oneWay(path, { choice: question.choice, number: question.number, pick: question.pick }, checker);
  for (const [name, drawn] of Object.entries(question.draws)) {
    const values = valuesOf(drawn, worlds.about(script));
    if (!values.ok) checker.fault([...path, 'draws', name], values.what, values.mend);
  }
  if (question.script !== undefined) {
    const filled = fillScript(
      question.script,
      Object.fromEntries(Object.keys(question.draws).map((name) => [name, { value: 1, dimension: 'plain' as const }])),
    );
    if (!filled.ok) checker.fault([...path, 'script'], filled.what, filled.mend);
  }
  let heard: Heard | undefined;
  const asked = new Set<string>();
  for (let seed = 1; seed <= draws && checker.faults.length === before; seed += 1) {
    const values = drawValues(question, seed, worlds, script);
    if (values.ok) {
      // The same values, or none, are the same question.
      const key = JSON.stringify(values.value);
      if (asked.has(key)) continue;
      asked.add(key);
    }
    const drawn = values.ok ? questionWith(question, values.value, worlds, script) : values;
    if (!drawn.ok) {
      checker.fault([...path, question.script === undefined ? 'draws' : 'script'], drawn.what, drawn.mend);
      return;
    }
    const { world } = drawn.value;
    checker.prose([...path, 'ask'], question.ask, world);
    if (question.choice) {
      checkChoice(question.choice, [...path, 'choice'], world, checker);
      if (Object.keys(question.draws).length === 0)
        checkRightIsFirst(question.choice, [...path, 'choice'], world, checker);
    }
    if (question.number) heard = checkNumber(question.number, [...path, 'number'], world, checker, heard);
    if (question.pick) checkPick(question.pick, [...path, 'pick'], world, checker);
    if (question.after !== undefined) checker.prose([...path, 'after'], question.after, world);
    const figure = question.number ?? question.pick;
    if (figure) checkSaidAgain(figure, [question.after ?? ''], path, world, checker);
  }
  if (question.number && heard && checker.faults.length === before)
    checkHeard(question.number, heard, [...path, 'number'], checker);
}

function oneWay(path: Path, ways: Readonly<Record<string, unknown>>, checker: Checker): void {
  const given = Object.keys(ways).filter((name) => ways[name] !== undefined);
  if (given.length === 1) return;
  const what =
    given.length === 0 ? 'There is no way to answer this.' : `There are ${given.length} ways to answer this.`;
  checker.fault(path, what, `Write exactly one of ${Object.keys(ways).join(', ')}.`);
}

function checkChoice(options: readonly Option[], path: Path, world: World, checker: Checker): void {
  const worked = options.filter(({ holds }) => holds !== undefined).length;
  const stated = options.filter(({ right }) => right).length;
  if (worked > 0 && stated > 0)
    checker.fault(path, 'Some answers say holds and some say right.', 'Use one of the two throughout.');
  options.forEach(({ text, because, holds }, i) => {
    if (holds !== undefined) checker.possible([...path, i, 'holds'], holds);
    checker.prose([...path, i, 'text'], text, world);
    checker.prose([...path, i, 'because'], because, world);
  });
  checkAnswerWords(options, path, checker);
  const right = rightOption(options, world);
  if (!right.ok) checker.fault(path, right.what, right.mend);
}

function checkFormat(
  as: string | undefined,
  path: Path,
  dimension: Parameters<typeof formatsFor>[0],
  checker: Checker,
): void {
  if (as === undefined || FORMATS[as]?.of.includes(dimension)) return;
  checker.fault(
    path,
    `The format ${quoted(as)} does not fit this value.`,
    `Write one of ${formatsFor(dimension).join(', ')}.`,
  );
}

/** In a check answers are mixed for whoever is asked, so the right one can stand first: elsewhere, it is a slip. */
function checkRightIsFirst(options: readonly Option[], path: Path, world: World, checker: Checker): void {
  const right = rightOption(options, world);
  if (right.ok && right.value > 0)
    checker.fault(
      [...path, right.value],
      'This answer is right, and is not the first. In a check the right one is written first, and mixed for whoever is asked.',
      'Write it first, or see which one is right.',
    );
}

/** A number is worked out once to be asked for and once more to be told, so that a slip in one of them shows. */
function checkSaidAgain(
  question: NumberAnswer | PickAnswer,
  after: readonly string[],
  path: Path,
  world: World,
  checker: Checker,
): void {
  const answer = judgeAmount(question.answer, world);
  if (!answer.ok) return;
  const replies =
    'others' in question ? [question.because] : [question.otherwise, ...question.wrong.map(({ because }) => because)];
  const { value, dimension } = answer.value;
  const said = [...after, ...replies].some((text) => {
    const template = parseTemplate(text);
    return (
      template.ok &&
      template.value.slots.some(({ expression }) => {
        const told = evaluateAmount(expression, world);
        return (
          told.ok &&
          told.value.dimension === dimension &&
          Math.abs(told.value.value - value) <= Math.max(1, Math.abs(value)) * 1e-6
        );
      })
    );
  });
  if (!said)
    checker.fault(
      path,
      'Nothing that is said after this question is its answer.',
      `Say it once more, worked out: {{${question.answer}}}. If it is said, what is asked for is another value.`,
    );
}

/** Which replies were said; undefined where there is no answer. */
function checkNumber(
  question: NumberAnswer,
  path: Path,
  world: World,
  checker: Checker,
  heard?: Heard,
): Heard | undefined {
  const asked = numberAsked(question, world);
  if (!asked.ok) {
    checker.fault([...path, 'answer'], asked.what, asked.mend);
    return undefined;
  }
  const { answer, within } = asked.value;
  checkFormat(question.as, [...path, 'as'], answer.dimension, checker);
  const width = { value: within, dimension: answer.dimension };
  const inside = withValues(world, {
    given: { value: answer.value + within * 2 + 1, dimension: answer.dimension },
    answer,
    within: width,
  });
  question.wrong.forEach(({ when, because }, i) => {
    checker.condition([...path, 'wrong', i, 'when'], when, inside);
    checker.prose([...path, 'wrong', i, 'because'], because, inside);
  });
  checker.prose([...path, 'otherwise'], question.otherwise, inside);
  if (!judgeNumber(question, asked.value, answer.value, world).right)
    checker.fault([...path, 'within'], 'The answer itself does not count.', 'Write a width above 0.');
  return hearReplies(question, asked.value, world, heard);
}

function checkPick(question: NonNullable<Question['pick']>, path: Path, world: World, checker: Checker): void {
  const amount = checker.amount([...path, 'answer'], question.answer, world);
  if (amount) checkFormat(question.as, [...path, 'as'], amount.dimension, checker);
  checker.prose([...path, 'because'], question.because, world);
  question.others.forEach(({ because }, i) => checker.prose([...path, 'others', i, 'because'], because, world));
  const picks = numbersToPick(question, world);
  if (!picks.ok) checker.fault(path, picks.what, picks.mend);
}

function checkDraw(question: DrawAnswer, path: Path, world: World, checker: Checker): void {
  const asked = drawAsked(question, world);
  if (!asked.ok) {
    checker.fault(path, asked.what, asked.mend);
    return;
  }
  const inside = worldWithSketch(world, asked.value, asked.value.truth);
  checkFeatures(question, asked.value, path, inside, checker);
  question.wrong.forEach(({ when, because }, i) => {
    checker.condition([...path, 'wrong', i, 'when'], when, inside);
    checker.prose([...path, 'wrong', i, 'because'], because, inside);
  });
}

/** The true curve has every feature, and so has it typed into the boxes; a sketch that knows nothing never passes. */
function checkFeatures({ features }: DrawAnswer, asked: DrawAsked, path: Path, world: World, checker: Checker): void {
  if (features.length === 0) return;
  const before = checker.faults.length;
  features.forEach(({ holds, because }, i) => {
    checker.claim([...path, 'features', i, 'holds'], holds, world);
    checker.prose([...path, 'features', i, 'because'], because, world);
  });
  if (checker.faults.length > before) return;
  if (!judgeSketch(features, asked, typedTruth(asked), world).right)
    checker.fault(
      [...path, 'boxes'],
      'The true curve, typed into the boxes, does not count as right.',
      'Add a moment to boxes where it bends, or ask less of the features.',
    );
  for (const { what, sketch } of ignorantSketches(asked)) {
    if (!judgeSketch(features, asked, sketch, world).right) continue;
    checker.fault(
      [...path, 'features'],
      `${what} would count as right.`,
      'Add a feature that it lacks, or give one more weight.',
    );
    return;
  }
}
