import type { Dimension } from '../lesson/expression/dimension';
import { lessonWorld } from '../lesson/expression/lesson-world';
import { fillText, printBoth } from '../lesson/expression/template';
import type { Amount, World } from '../lesson/expression/world';
import { judgeAmount, judgeCondition, numberAsked, rightOption } from '../lesson/questions/judge';
import type { Truth, TruthOf } from './ask';
import { atMoment, type DiveAsk, type Mistake, type NumberAsk } from './dive-asks';
import type { Words } from './words';

/** A dive and a moment of it. */
export interface DiveMoment {
  readonly title: string;
  readonly script: string;
  /** s since the script began. */
  readonly atS: number;
  /** Rules of its units, where they differ from the usual. */
  readonly rules?: Record<string, unknown> | undefined;
}

type Made =
  | { readonly ok: true; readonly asked: AskOfMoment; readonly truth: Truth }
  /** Why it can't be asked here. */
  | { readonly ok: false; readonly why: string };

type AskOfMoment =
  | { readonly by: 'number'; readonly dimension: Dimension }
  | { readonly by: 'choice'; readonly options: Words[] }
  | { readonly by: 'leader' };

/** No answer typed by a hand is greater, in the unit of expressions. */
const MOST = 999;
const NOTHING_THERE = 'There is no figure for that at this moment; move to one where there is.';
const NONE_LEADS = 'None leads here: nothing would ever end the stay.';

/** A text or an expression of a question of a moment, in the world of its dive. */
interface Here {
  readonly world: World;
  readonly at: (text: string) => string;
}

/** What a question of a moment is asked as and what the engine says to it; or why it can't be asked there. */
export function askMoment({ question, unless = [] }: DiveAsk, { title, script, atS, rules }: DiveMoment): Made {
  const world = lessonWorld({ scripts: { dive: { title, script, rules } } }).about();
  const here: Here = { world, at: (text) => atMoment(text, atS) };
  for (const { when, why } of unless) {
    const so = judgeCondition(here.at(when), world);
    if (so.ok && so.value) return { ok: false, why };
  }
  if (question.by === 'choice') {
    const right = rightOption(
      question.options.map(({ text, holds }) => ({ text, holds: here.at(holds), because: text })),
      world,
    );
    if (!right.ok) return { ok: false, why: NOTHING_THERE };
    const because = wordsOf(question.because[right.value]!, here);
    return {
      ok: true,
      asked: { by: 'choice', options: question.options.map(({ text }) => text) },
      truth: { by: 'choice', right: right.value, because: question.options.map(() => because) },
    };
  }
  const asked = numberAsked(
    { answer: here.at(question.answer), within: here.at(question.within), as: question.as },
    world,
  );
  if (!asked.ok || Math.abs(asked.value.answer.value) > MOST) return { ok: false, why: NOTHING_THERE };
  const { answer, within, format } = asked.value;
  if (question.by === 'leader') {
    const compartment = answer.value;
    if (compartment < 1) return { ok: false, why: NONE_LEADS };
    const others = Array.from({ length: 16 }, (_, i) => i + 1).filter((other) => other !== compartment);
    const because = repliesTo(question, answer, here);
    return {
      ok: true,
      asked: { by: 'leader' },
      truth: {
        by: 'leader',
        compartment,
        because: others.flatMap((other) => {
          const reply = because.find(({ from = -Infinity, to = Infinity }) => other >= from && other < to);
          return reply ? [{ compartment: other, words: reply.words }] : [];
        }),
      },
    };
  }
  return {
    ok: true,
    asked: { by: 'number', dimension: answer.dimension },
    truth: {
      by: 'number',
      value: answer.value,
      within,
      printed: printBoth(answer, format),
      because: repliesTo(question, answer, here),
    },
  };
}

type Reply = NonNullable<TruthOf<'number'>['because']>[number];

/** A text with the values of its moment; nothing where one of them has none. */
function wordsOf(text: string, { world, at }: Here): Words {
  const [metric, imperial] = (['metric', 'imperial'] as const).map((system) => fillText(at(text), world, system));
  return metric?.ok && imperial?.ok ? { metric: metric.value, imperial: imperial.value } : '';
}

/** A usual mistake at a moment: what it comes to there, and how near to that an answer is taken to be it. */
interface MistakeHere extends Mistake {
  readonly middle: number;
  readonly width: number;
}

/** The usual mistakes that have a value at a moment, and one that isn't right: what can't be told from the answer is no mistake. */
export function usualMistakes(question: NumberAsk, right: number, { world, at }: Here): MistakeHere[] {
  const within = judgeAmount(at(question.within), world);
  return question.mistakes.flatMap((mistake) => {
    const [value, near] = [judgeAmount(at(mistake.value), world), judgeAmount(mistake.near, world)];
    if (!value.ok || !near.ok || !within.ok || !Number.isFinite(value.value.value)) return [];
    const middle = value.value.value;
    if (Math.abs(middle - right) <= within.value.value || wordsOf(mistake.because, { world, at }) === '') return [];
    return [{ ...mistake, middle, width: near.value.value }];
  });
}

/** What is said to wrong numbers, from the least to the greatest: a usual mistake where one is near, or that it is too little or too much. */
function repliesTo(question: NumberAsk, answer: Amount, here: Here): Reply[] {
  const usual = usualMistakes(question, answer.value, here).map(({ middle, width, because }) => ({
    from: middle - width,
    to: middle + width,
    words: wordsOf(because, here),
  }));
  const sides = [
    { from: -Infinity, to: answer.value, words: wordsOf(question.tooLittle, here) },
    { from: answer.value, to: Infinity, words: wordsOf(question.tooMuch, here) },
  ];
  const all = [...usual, ...sides].filter(({ words }) => words !== '');
  const edges = [...new Set(all.flatMap(({ from, to }) => [from, to]))].sort((one, other) => one - other);
  return edges.slice(0, -1).flatMap((from, i): Reply[] => {
    const to = edges[i + 1]!;
    const middle = from === -Infinity ? to - 1 : to === Infinity ? from + 1 : (from + to) / 2;
    const said = all.find((one) => middle >= one.from && middle < one.to);
    return said ? [{ ...(from > -Infinity && { from }), ...(to < Infinity && { to }), words: said.words }] : [];
  });
}
