import { printClock } from '../../quantity/duration';
import { quoted } from '../../quantity/parsed';
import type { LessonWorld } from '../expression/lesson-world';
import type { FactRead, World } from '../expression/world';
import type { Lesson } from '../lesson';
import { momentOf } from '../questions/drawing-question';
import type { Tells } from '../questions/known-names';
import type { Subject } from '../questions/subject';
import type { LessonStep } from '../step';
import type { PlacedFault } from './fault';
import { ONE_MOMENT_S, readsOf, sameFact, sameMoment, secretOf, tellsFact, type Secret } from './secrets';
import { type Path, type Words, type Told, toldBefore } from './told-before';

/*
 * Nothing a prediction asks for may be told before it is answered: not in a text, not in a picture, a reading or a
 * working. Pictures of a dive are cut short where a later question begins, and what can’t be cut is a fault.
 */

/** Pictures and readings of one dive, looked at as far as a moment. */
interface Stage {
  readonly step: number;
  readonly path: Path;
  readonly shown: readonly string[];
  readonly world: World;
  /** As far as it has to reach, s; it may be cut after that. */
  readonly floorS: number;
  /** A working stands at one moment and shows nothing of any other. */
  readonly atOnly: boolean;
}

interface Question {
  readonly step: number;
  readonly title: string;
  readonly subject: Subject;
  readonly secret: Secret;
  /** What it may be told before. */
  readonly given: readonly FactRead[];
}

/** Before a question whose moment this is, a picture ends so many seconds sooner. */
const SHY_S = 60;

/** A picture that is cut shorter than this shows nothing. */
const LEAST_S = 30;

/** Where the picture of a step has to end, by the step’s place; steps that may show all are left out. */
export function cutsOf(lesson: Lesson, worlds: LessonWorld, tells: Tells): ReadonlyMap<number, number> {
  const questions = questionsOf(lesson, worlds);
  const cuts = new Map<number, number>();
  for (const stage of lesson.steps.flatMap((step, i) => stagesOf(step, i, worlds))) {
    if (stage.atOnly) continue;
    const cutS = cutOf(stage, questions, tells);
    if (cutS !== undefined) cuts.set(stage.step, cutS);
  }
  return cuts;
}

/** Everything that is told before a prediction that asks for it. */
export function givenAway(lesson: Lesson, worlds: LessonWorld, tells: Tells): PlacedFault[] {
  const questions = questionsOf(lesson, worlds);
  const told = toldBefore(lesson, worlds);
  const stages = lesson.steps.flatMap((step, i) => stagesOf(step, i, worlds));
  return questions.flatMap((question) => {
    const texts = told.filter(({ until }) => until <= question.step).flatMap(({ values }) => values);
    const shown = stages.filter(({ step }) => step < question.step);
    const words = told.filter(({ until }) => until <= question.step).flatMap((one) => one.words);
    return [...faultsOf(question, texts, shown, tells), ...typedFaults(question, words)];
  });
}

function questionsOf(lesson: Lesson, worlds: LessonWorld): Question[] {
  return lesson.steps.flatMap((step, index) => {
    if (step.kind !== 'predict') return [];
    const world = worlds.about(step.script);
    const secret = secretOf(step, world);
    const given = step.given.flatMap((source) => readsOf(source, world));
    return secret ? [{ step: index, title: step.title, subject: world.subject, secret, given }] : [];
  });
}

function faultsOf(
  { step, title, secret, given }: Question,
  texts: readonly Told[],
  stages: readonly Stage[],
  tells: Tells,
): PlacedFault[] {
  const asks = `what ${quoted(title)} asks for`;
  const isGiven = (read: FactRead) =>
    given.some((one) => sameFact(one, read) && sameMoment(one, read) && one.view === read.view);
  if (secret.is === 'sum') {
    return texts
      .filter(
        ({ amount, reads }) =>
          reads.length > 0 &&
          reads.every(({ name }) => secret.names.has(name)) &&
          amount.dimension === secret.answer.dimension &&
          Math.abs(amount.value - secret.answer.value) <= secret.within,
      )
      .map((one) => textFault(one, asks));
  }
  if (secret.is === 'curve') {
    const inside = (read: FactRead) =>
      sameFact(read, secret.read) &&
      read.view === secret.read.view &&
      (read.atS === undefined || (read.atS > secret.fromS + ONE_MOMENT_S && read.atS <= secret.toS + ONE_MOMENT_S)) &&
      !isGiven(read);
    return [
      ...texts.filter(({ reads }) => reads.some(inside)).map((one) => textFault(one, asks)),
      ...stages
        .filter((stage) => tellsOf(stage, secret.read, tells) && stage.floorS > secret.fromS + SHY_S)
        .map((stage) => stageFault(stage, asks, secret.fromS)),
    ];
  }
  // Of several facts that decide together, only all of them tell the answer.
  const secrets = secret.reads.filter((read) => !isGiven(read));
  if (secrets.length === 0)
    return secret.printed
      ? [
          {
            path: ['steps', step, 'given'],
            what: 'What is named here as given is what the question asks for.',
            mend: 'Ask for something else, or give something else.',
          },
        ]
      : [];
  const tellers = secrets.map((asked) => {
    const text = texts.find(({ reads }) => reads.some((read) => tellsFact(read, asked, secret.within)));
    if (text) return textFault(text, asks);
    const stage = stages.find((one) => tellsOf(one, asked, tells) && reaches(one, momentOfRead(asked)));
    return stage && stageFault(stage, asks, momentOfRead(asked));
  });
  return tellers.every((fault) => fault !== undefined) ? tellers.slice(-1) : [];
}

/** The answer typed by hand, as it would be printed. */
function typedFaults({ title, subject, secret: { printed } }: Question, words: readonly Words[]): PlacedFault[] {
  if (!printed) return [];
  const forms = [...new Set([printed.metric, printed.imperial])].map((form) =>
    form.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&'),
  );
  const pattern = new RegExp(`(?<![\\d.,])(?:${forms.join('|').replaceAll(' ', '\\s')})(?![\\w.,]*\\d)(?!\\w)`);
  return words.flatMap((one) => {
    if (one.subject && one.subject !== subject) return [];
    const found = pattern.exec(one.words);
    if (!found) return [];
    const below = one.words.slice(0, found.index).split('\n').length;
    return [textFault({ path: one.path, below, written: found[0] }, `what ${quoted(title)} asks for`)];
  });
}

function textFault({ path, below, written }: Pick<Told, 'path' | 'below' | 'written'>, asks: string): PlacedFault {
  return {
    path,
    below,
    what: `${quoted(written)} tells ${asks} before it is answered.`,
    mend: 'Take the value out, or say it after the answer.',
  };
}

function stageFault({ path, atOnly }: Stage, asks: string, atS: number): PlacedFault {
  return {
    path,
    what: `${atOnly ? 'This working' : 'What is shown here'} tells ${asks} before it is answered.`,
    mend: atOnly
      ? 'Open another one, or open it after the answer.'
      : `Show other pictures or readings, end before ${printClock(atS)}, or show it after the answer.`,
  };
}

/** When a fact is settled, s: its moment, or for what is so of a whole dive, when the bottom is left. */
function momentOfRead({ atS, name, value, view, dive }: FactRead): number {
  if (atS !== undefined) return atS;
  if (name === 'firstMin' && Number.isFinite(value)) return value * 60;
  const { spans } = view.subject;
  const span = dive === undefined ? spans.at(-1) : spans[dive - 1];
  return span?.leavingS ?? span?.startS ?? 0;
}

function tellsOf({ shown, world }: Stage, asked: FactRead, tells: Tells): boolean {
  if (asked.view.subject !== world.subject) return false;
  const ofUnit = asked.view !== asked.view.subject.truth;
  return shown.some(
    (name) =>
      (!ofUnit || name === 'units' || name === 'log') &&
      (Object.hasOwn(tells, name) ? tells[name]! : []).includes(asked.name),
  );
}

function reaches({ floorS, atOnly }: Stage, momentS: number): boolean {
  return atOnly ? Math.abs(floorS - momentS) < ONE_MOMENT_S : floorS > momentS - SHY_S || momentS - SHY_S < LEAST_S;
}

function cutOf(stage: Stage, questions: readonly Question[], tells: Tells): number | undefined {
  const cuts = questions
    .filter(({ step }) => step > stage.step)
    .flatMap(({ secret }) => {
      if (secret.is === 'sum') return [];
      if (secret.is === 'curve') return tellsOf(stage, secret.read, tells) ? [secret.fromS] : [];
      return secret.reads.filter((read) => tellsOf(stage, read, tells)).map((read) => momentOfRead(read) - SHY_S);
    })
    .filter((cutS) => cutS >= Math.max(LEAST_S, stage.floorS));
  return cuts.length > 0 ? Math.min(...cuts) : undefined;
}

function stagesOf(step: LessonStep, index: number, worlds: LessonWorld): Stage[] {
  const at = (moment: string, world: World) => {
    const timeS = momentOf(moment, world);
    return timeS.ok ? timeS.value : world.subject.endS;
  };
  const path = ['steps', index];
  if (step.kind === 'read' && step.look) {
    const world = worlds.about(step.look.script);
    const floorS = at(step.look.at, world);
    return [{ step: index, path: [...path, 'look', 'show'], shown: step.look.show, world, floorS, atOnly: false }];
  }
  if (step.kind === 'run') {
    const world = worlds.about(step.script);
    const shown = [...step.show, ...(step.readings ?? EVERY_READING)];
    return [{ step: index, path: [...path, 'show'], shown, world, floorS: at(step.to, world), atOnly: false }];
  }
  if (step.kind === 'explain') {
    const world = worlds.about(step.script);
    const floorS = at(step.at, world);
    return [{ step: index, path: [...path, 'reading'], shown: [step.reading], world, floorS, atOnly: true }];
  }
  if (step.kind !== 'try') return [];
  const world = worlds.about(step.script);
  return [{ step: index, path: [...path, 'show'], shown: step.show, world, floorS: world.subject.endS, atOnly: false }];
}

/** The readings of a run that names none. */
const EVERY_READING = ['no-stop', 'ceiling', 'required-stop', 'time-to-surface', 'supersaturation', 'safety-stop'];
