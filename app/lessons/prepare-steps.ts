import { cautions } from '@/content/cautions';
import { numberAsked, rightOption } from '@/lib/lesson/questions/judge';
import type { Evaluated } from '@/lib/lesson/expression/evaluate';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { Lesson } from '@/lib/lesson/lesson';
import { lessonWorld, type LessonWorld } from '@/lib/lesson/expression/lesson-world';
import type { Work } from '@/lib/lesson/expression/work';
import { drawAsked, momentOf } from '@/lib/lesson/questions/drawing-question';
import type { DrawAsked } from '@/lib/lesson/questions/sketch';
import type { LessonStep, Question, StepOf } from '@/lib/lesson/step';
import { fillSlots, parseTemplate, printBoth } from '@/lib/lesson/expression/template';
import type { World } from '@/lib/lesson/expression/world';
import { lessonInFeet } from '@/lib/lesson/in-feet';
import { withFeet } from './with-feet';
import { fillHtml, slotToken, withoutTokens, type Fillable } from './fillable';
import type { Html, PreparedLesson, PreparedNotes, PreparedQuestion, PreparedReply, PreparedStep } from './prepared';

/** Sets a text, its values marked by `slotToken`, as HTML. */
export interface Typesetter {
  readonly prose: (marked: string) => Html;
  /** A text of one paragraph, without the paragraph around it. */
  readonly line: (marked: string) => Html;
}

/** Where the picture of a step has to end, s, by the step's place; steps that may show all are left out. */
export type Cuts = ReadonlyMap<number, number>;

export interface HowToPrepare {
  readonly typesetter: Typesetter;
  readonly cutsOf: (lesson: Lesson, worlds: LessonWorld, system: UnitSystem) => Cuts;
  /** How much may be worked out; without bound where left out, for lessons that were checked. */
  readonly work?: Work;
}

/** A text that was checked and yet has no value: the lesson was not checked first. */
function certain<T>(evaluated: Evaluated<T>): T {
  if (evaluated.ok) return evaluated.value;
  throw new Error(`${evaluated.what} ${evaluated.mend}`);
}

/** Sets texts and fills them. */
class Setter {
  constructor(
    private readonly typesetter: Typesetter,
    readonly system: UnitSystem,
  ) {}

  fillable(text: string, as: 'line' | 'prose'): Fillable {
    const template = parseTemplate(withoutTokens(text));
    if (!template.ok) throw new Error(`${template.what} ${template.mend}`);
    const { pieces, slots } = template.value;
    const marked = pieces.map((piece, i) => piece + (i < slots.length ? slotToken(i) : '')).join('');
    return {
      html: this.typesetter[as](marked),
      slots: slots.map(({ written, format }) => ({ source: written, format })),
    };
  }

  private filled(text: string, world: World, as: 'line' | 'prose'): Html {
    const template = parseTemplate(withoutTokens(text));
    if (!template.ok) throw new Error(`${template.what} ${template.mend}`);
    return fillHtml(this.fillable(text, as), certain(fillSlots(template.value, world)));
  }

  prose(text: string, world: World): Html {
    return this.filled(text, world, 'prose');
  }

  line(text: string, world: World): Html {
    return this.filled(text, world, 'line');
  }

  replies(replies: readonly { readonly when: string; readonly because: string }[]): PreparedReply[] {
    return replies.map(({ when, because }) => ({ when, because: this.fillable(because, 'line') }));
  }
}

/** A checked lesson with its texts set and its answers worked out. Throws where it was not checked and is wrong. */
export function prepareSteps(lesson: Lesson, slug: string, how: HowToPrepare): PreparedLesson {
  const metric = prepareInOne(lesson, slug, how, 'metric');
  return lesson.inFeet ? withFeet(metric, prepareInOne(lessonInFeet(lesson), slug, how, 'imperial')) : metric;
}

function prepareInOne(lesson: Lesson, slug: string, how: HowToPrepare, system: UnitSystem): PreparedLesson {
  const worlds = lessonWorld(lesson, how.work);
  const set = new Setter(how.typesetter, system);
  const world = worlds.about();
  const first = Object.keys(lesson.scripts)[0]!;
  const cuts = how.cutsOf(lesson, worlds, system);
  return {
    slug,
    number: lesson.number,
    title: lesson.title,
    summary: lesson.summary,
    level: lesson.level,
    minutes: lesson.minutes,
    needs: lesson.needs.map((text) => set.line(text, world)),
    objectives: lesson.objectives.map((text) => set.line(text, world)),
    cautions: lesson.cautions.flatMap((name) =>
      name === 'general' || !Object.hasOwn(cautions, name) ? [] : [cautions[name as keyof typeof cautions]],
    ),
    scripts: lesson.scripts,
    opening: lesson.opening === undefined ? undefined : set.prose(lesson.opening, world),
    steps: lesson.steps.map((step, i) => prepareStep(step, worlds.about(scriptOf(step)), first, set, cuts.get(i))),
  };
}

function scriptOf(step: LessonStep): string | undefined {
  return step.kind === 'read' ? step.look?.script : 'script' in step ? step.script : undefined;
}

function prepareStep(
  step: LessonStep,
  world: World,
  first: string,
  set: Setter,
  untilS: number | undefined,
): PreparedStep {
  const common = {
    id: step.id,
    title: step.title,
    html: set.prose(step.text, world),
    more: step.more === undefined ? undefined : set.prose(step.more, world),
    notes: notesOf(step, world, set),
  };
  const script = scriptOf(step) ?? first;
  const at = (moment: string) => certain(momentOf(moment, world));
  switch (step.kind) {
    case 'read':
      return {
        ...common,
        kind: 'read',
        look: step.look && { script, show: step.look.show, atS: at(step.look.at), untilS },
      };
    case 'predict':
      return preparePredict(step, common, script, world, set);
    case 'run':
      return {
        ...common,
        kind: 'run',
        script,
        show: step.show,
        readings: step.readings,
        fromS: at(step.from),
        toS: at(step.to),
        untilS,
        watch: step.watch
          .map(({ at: moment, text }) => ({ atS: at(moment), html: set.line(text, world) }))
          .sort((one, other) => one.atS - other.atS),
      };
    case 'explain':
      return { ...common, kind: 'explain', script, reading: step.reading, atS: at(step.at) };
    case 'try':
      return {
        ...common,
        kind: 'try',
        script,
        show: step.show,
        goal: step.goal,
        free: step.free,
        hints: set.replies(step.hints),
        reach: step.reach,
        after: step.after === undefined ? undefined : set.prose(step.after, world),
      };
    case 'check':
      return {
        ...common,
        kind: 'check',
        script,
        questions: step.questions.map((question) => prepareQuestion(question, set)),
      };
    case 'recap':
      return { ...common, kind: 'recap', points: step.points.map((text) => set.line(text, world)) };
  }
}

function notesOf({ notes }: LessonStep, world: World, set: Setter): PreparedNotes | undefined {
  return (
    notes && {
      ask: notes.ask.map((text) => set.line(text, world)),
      wrong: notes.wrong.map(({ answer, tempts }) => ({
        answer: set.line(answer, world),
        tempts: set.line(tempts, world),
      })),
      tip: notes.tip === undefined ? undefined : set.line(notes.tip, world),
    }
  );
}

/** A curve for a page: no finer than it can be drawn or told, for it is fetched with the lesson. */
function finelyDrawn(asked: DrawAsked): DrawAsked {
  const truth = asked.truth.map(({ timeS, value }) => ({
    timeS: Math.round(timeS * 1e2) / 1e2,
    value: Math.round(value * 1e4) / 1e4,
  }));
  return { ...asked, truth };
}

type CommonPart = Pick<PreparedStep, 'id' | 'title' | 'html' | 'more' | 'notes'>;

function preparePredict(
  step: StepOf<'predict'>,
  common: CommonPart,
  script: string,
  world: World,
  set: Setter,
): PreparedStep {
  const right = step.choice && certain(rightOption(step.choice, world));
  const asked = step.number && certain(numberAsked(step.number, world));
  return {
    ...common,
    kind: 'predict',
    script,
    byModel: step.choice === undefined || step.choice.some(({ holds }) => holds !== undefined),
    choice: step.choice?.map(({ text, because }, index) => ({
      html: set.line(text, world),
      right: index === right,
      because: set.line(because, world),
    })),
    number:
      step.number && asked
        ? {
            ...asked,
            printed: printBoth(asked.answer, asked.format),
            wrong: set.replies(step.number.wrong),
            otherwise: set.fillable(step.number.otherwise, 'line'),
          }
        : undefined,
    draw: step.draw && {
      ...finelyDrawn(certain(drawAsked(step.draw, world, set.system))),
      features: step.draw.features.map((feature) => ({
        ...feature,
        because: set.fillable(feature.because, 'line'),
      })),
      wrong: set.replies(step.draw.wrong),
    },
    after: set.prose(step.after, world),
  };
}

function prepareQuestion(question: Question, set: Setter): PreparedQuestion {
  const { choice, number, pick } = question;
  return {
    id: question.id,
    question,
    ask: set.fillable(question.ask, 'prose'),
    after: question.after === undefined ? undefined : set.fillable(question.after, 'prose'),
    choice: choice?.map(({ text, because }) => ({
      text: set.fillable(text, 'line'),
      because: set.fillable(because, 'line'),
    })),
    number: number && { wrong: set.replies(number.wrong), otherwise: set.fillable(number.otherwise, 'line') },
    pick: pick && {
      because: set.fillable(pick.because, 'line'),
      others: pick.others.map(({ because }) => set.fillable(because, 'line')),
    },
  };
}
