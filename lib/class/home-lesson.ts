import { parse, stringify } from 'yaml';
import { ownTextAsMarkdown } from './own-text';
import type { KnownNames } from '../lesson/questions/known-names';
import type { LessonFault } from '../lesson/checking/fault';
import { readLesson } from '../lesson/read-lesson';
import { judgeAmount } from '../lesson/questions/judge';
import { lessonWorld } from '../lesson/expression/lesson-world';
import type { Asked, Origin } from './class-state';
import { usualMistakes } from './ask-moment';
import { atMoment, DIVE_ASKS, type NumberAsk } from './dive-asks';
import { inUnits } from './words';

/*
 * The questions of a class as a lesson, for those who can't be there: it is taken, kept and handed in as any lesson is, and
 * nothing in it is worked out but by the engine.
 */

/** A question that stays in the class, and why. */
export interface LeftOut {
  readonly title: string;
  readonly why: string;
}

export interface HomeLesson {
  /** The lesson as YAML; undefined where no question can be taken along. */
  readonly text: string | undefined;
  readonly leftOut: readonly LeftOut[];
}

type Data = Readonly<Record<string, unknown>>;

interface Taken {
  readonly step: Data;
  readonly scripts: Data;
}

interface Gathered extends Taken {
  readonly title: string;
}

const NO_RIGHT = 'No answer is marked as right, so nobody could be told anything at home.';
const NOT_HERE = 'The lesson it comes from could not be fetched.';
const TOO_MANY = 'A lesson holds no more dives; make another of the questions that are left.';
const OTHER_DIVE = 'Its lesson calls another dive by a name that is taken here; send a link to that lesson for it.';
const MOST_SCRIPTS = 12;
const MOST_STEPS = 39;
/** What a lesson without a dive is given to have one; nothing is asked about it. */
const SOME_DIVE = {
  title: 'A dive',
  script: 'gas: air\ndescend to 18 m at 18 m/min\nstay 20 min\nascend to surface at 9 m/min\n',
};

/**
 * Makes a lesson of what a class was asked. What the check of lessons refuses, such as a question whose answer an earlier
 * one tells, is left out.
 * @param texts the lessons of the shelf the questions come from, and the teacher's own under `OWN_LESSON`, as YAML
 */
export function homeLesson(
  asked: readonly Asked[],
  texts: ReadonlyMap<string, string>,
  { title, known }: { readonly title: string; readonly known: KnownNames },
): HomeLesson {
  const leftOut: LeftOut[] = [];
  const taken = gathered(asked, texts, leftOut);
  while (taken.length > 0) {
    const text = written(taken, title);
    const read = readLesson(text, { known });
    if (read.ok) return { text, leftOut };
    const [fault] = read.faults;
    const at = fault?.path[0] === 'steps' ? Number(fault.path[1]) : -1;
    const mended = taken[at] && withoutReply(taken[at], fault!.path);
    if (mended) {
      taken[at] = mended;
      continue;
    }
    const gone = taken.splice(at >= 0 && at < taken.length ? at : taken.length - 1, 1)[0]!;
    leftOut.push({ title: gone.title, why: `${fault?.what ?? ''} It stays in the class.` });
  }
  return { text: undefined, leftOut };
}

/** The question without the reply that a fault is about, such as one nobody can come to at this moment; undefined where it is about something else. */
function withoutReply(one: Gathered, [, , part, list, place]: LessonFault['path']): Gathered | undefined {
  const number = one.step['number'] as Data | undefined;
  if (part !== 'number' || list !== 'wrong' || number === undefined) return undefined;
  const wrong = (number['wrong'] as unknown[]).filter((_, i) => i !== place);
  return { ...one, step: { ...one.step, number: { ...number, wrong } } };
}

/** What can be taken along, each with the dives it needs; the rest is put to what is left out. */
function gathered(asked: readonly Asked[], texts: ReadonlyMap<string, string>, leftOut: LeftOut[]): Gathered[] {
  const gathered: Gathered[] = [];
  const ids = new Set<string>();
  asked.forEach((one, index) => {
    const taken = takenOf(one, index, texts);
    const why = 'why' in taken ? taken.why : noRoom(taken, gathered);
    if ('why' in taken || why !== undefined) {
      leftOut.push({ title: one.ask.title, why: why ?? '' });
      return;
    }
    const id = freshId(String(taken.step['id']), ids);
    ids.add(id);
    gathered.push({ title: one.ask.title, scripts: taken.scripts, step: { ...taken.step, id } });
  });
  return gathered;
}

function noRoom({ scripts }: Taken, before: readonly Taken[]): string | undefined {
  const there = scriptsOf(before);
  if (Object.keys({ ...there, ...scripts }).length > MOST_SCRIPTS || before.length >= MOST_STEPS) return TOO_MANY;
  const other = Object.entries(scripts).some(
    ([name, script]) => name in there && JSON.stringify(there[name]) !== JSON.stringify(script),
  );
  return other ? OTHER_DIVE : undefined;
}

const scriptsOf = (all: readonly Taken[]): Data => Object.assign({}, ...all.map(({ scripts }) => scripts)) as Data;

function written(taken: readonly Taken[], title: string): string {
  const scripts = scriptsOf(taken);
  return stringify(
    {
      title,
      summary: 'What our class was asked, to be answered at home.',
      level: 'first steps',
      minutes: Math.min(180, 3 * taken.length),
      objectives: ['You have answered what the class was asked, and seen what the model says to it.'],
      scripts: Object.keys(scripts).length > 0 ? scripts : { dive: SOME_DIVE },
      steps: [
        ...taken.map(({ step }) => step),
        {
          kind: 'recap',
          id: 'hand-it-in',
          title: 'Hand it in',
          text: 'That was all. Go on to your results, and choose **Hand in** there: as a link, a code or a file.',
          points: ['What you said first counts, right or wrong; a wrong guess that surprised you is worth more.'],
        },
      ],
    },
    // Lines as they are in the lessons of the shelf, so that a link need not hold what stands there.
    { lineWidth: 0 },
  );
}

function freshId(id: string, taken: ReadonlySet<string>): string {
  if (!taken.has(id)) return id;
  let count = 2;
  while (taken.has(`${id.slice(0, 36)}-${count}`)) count += 1;
  return `${id.slice(0, 36)}-${count}`;
}

function takenOf(one: Asked, index: number, texts: ReadonlyMap<string, string>): Taken | { readonly why: string } {
  const { ask, truth, origin } = one;
  if (ask.source) return fromLesson(texts.get(ask.source.lesson), ask.source.question);
  if (origin?.by === 'own lesson') return fromLesson(texts.get(OWN_LESSON), origin.question);
  if (origin?.by === 'dive') return fromDive(origin, one, index);
  if (ask.by !== 'choice' || truth.by !== 'choice' || truth.right === undefined) return { why: NO_RIGHT };
  return {
    step: {
      kind: 'predict',
      id: `own-${index + 1}`,
      title: `Question ${index + 1}`,
      text: ownTextAsMarkdown(inUnits(ask.text ?? ask.title, 'metric')),
      choice: ask.options.map((option, i) => ({
        text: ownTextAsMarkdown(inUnits(option, 'metric')),
        ...(i === truth.right && { right: true }),
        because:
          i === truth.right
            ? 'Your teacher has marked this one as right.'
            : 'Your teacher has marked another as right.',
      })),
      after: 'Your teacher has marked which one is right; the engine has no say in it.',
    },
    scripts: {},
  };
}

/** The terms of the glossary a lesson links to, by id. */
export function termsIn(text: string): string[] {
  return [...text.matchAll(/\(term:([a-z0-9-]+)\)/g)].map(([, id]) => id!);
}

/** Under which name the text of a lesson that is not on the shelf is given. */
export const OWN_LESSON = 'own lesson';

/** A step of a lesson as it stands there, or one question of it, with the dives it speaks of. */
function fromLesson(text: string | undefined, question: string): Taken | { readonly why: string } {
  if (text === undefined) return { why: NOT_HERE };
  const lesson = parse(text, { maxAliasCount: 0, logLevel: 'silent' }) as {
    readonly scripts: Data;
    readonly steps: readonly (Data & { readonly questions?: readonly Data[] })[];
  };
  const [id, its] = question.split('/');
  const step = lesson.steps.find((one) => one['id'] === id);
  if (!step) return { why: NOT_HERE };
  const { claims: _claims, notes: _notes, ...rest } = step;
  const script = String(step['script'] ?? Object.keys(lesson.scripts)[0]);
  return {
    step: {
      ...rest,
      script,
      ...(its !== undefined && { questions: step.questions?.filter((one) => one['id'] === its) }),
    },
    scripts: Object.fromEntries(
      Object.entries(lesson.scripts).filter(
        ([name]) => name === script || new RegExp(`\\b${name}\\b`).test(JSON.stringify(rest)),
      ),
    ),
  };
}

function fromDive(
  { ask: askId, atS, title, script, rules }: Extract<Origin, { by: 'dive' }>,
  { ask, truth }: Asked,
  index: number,
): Taken | { readonly why: string } {
  const one = DIVE_ASKS.find(({ id }) => id === askId);
  if (!one) return { why: NOT_HERE };
  const name = `asked${index + 1}`;
  const scripts = { [name]: { title, script, ...(rules && { rules }) } };
  const world = lessonWorld({ scripts }).about();
  const at = (text: string) => atMoment(text, atS);
  const step = {
    kind: 'predict',
    id: `${askId}-${index + 1}`,
    title: ask.title,
    text: `${wayUntil(ask)}\n\n**${one.words}**`,
    script: name,
  };
  const { question } = one;
  if (question.by === 'choice') {
    const right = truth.by === 'choice' ? truth.right : undefined;
    const because = at(question.because[right ?? 0]!);
    return {
      step: {
        ...step,
        choice: question.options.map(({ text, holds }) => ({ text, holds: at(holds), because })),
        after: because,
      },
      scripts,
    };
  }
  const answer = at(question.answer);
  const right = judgeAmount(answer, world);
  if (!right.ok) return { why: NOT_HERE };
  return {
    step: {
      ...step,
      number: {
        answer,
        within: question.within,
        ...(question.as !== undefined && { as: question.as }),
        wrong: [
          ...wrongOf(question, right.value.value, { world, at }),
          { when: 'given < answer', because: at(question.tooLittle) },
        ],
        otherwise: at(question.tooMuch),
      },
      after: `The model says **{{${answer}${question.as === undefined ? '' : ` | ${question.as}`}}}**.`,
    },
    scripts,
  };
}

function wrongOf(question: NumberAsk, right: number, here: Parameters<typeof usualMistakes>[2]) {
  return usualMistakes(question, right, here).map(({ value, near, because }) => ({
    when: `abs(given - (${here.at(value)})) <= ${near}`,
    because: here.at(because),
  }));
}

/** The dive up to the moment in words, each bend of it in the reader's units. */
function wayUntil({ picture }: Asked['ask']): string {
  if (!picture) return 'A dive, and a moment of it.';
  const bends = picture.points.filter((point, i, all) => i === 0 || String(point) !== String(all[i - 1]));
  const told = bends.length > MOST_BENDS ? bends.slice(-MOST_BENDS) : bends;
  const words = told.map(([timeS, depthM]) => `{{${depthM} m}} at {{${timeS} s | clock}}`).join(', ');
  return `The dive ${told.length < bends.length ? 'just before this moment' : 'up to this moment'}, depth and run time: ${words}.`;
}

/** Values that one text may hold are sixty; each bend has two. */
const MOST_BENDS = 24;
