import { parseScript } from '../../dive/script';
import { quoted } from '../../quantity/parsed';
import { sayIssue } from '../../quantity/schema-words';
import { ruleSettingsSchema } from '../../rules/settings/rule-settings';
import { UNIT_READING_IDS } from '../../working/rules/unit-all';
import { checkPredict, checkQuestion } from '../questions/check-questions';
import { checkGoalWords } from './check-goal-words';
import { Checker } from './checker';
import { lessonInFeet } from '../in-feet';
import { givenAway } from './given-away';
import type { PlacedFault } from './fault';
import type { KnownNames } from '../questions/known-names';
import type { Lesson } from '../lesson';
import { goalStateOf } from '../questions/goal';
import { judgeCondition } from '../questions/judge';
import { lessonWorld, scriptErrors, subjectOfScript, type LessonWorld } from '../expression/lesson-world';
import { openedWorking } from '../questions/opened-working';
import type { LessonStep, StepOf } from '../step';
import { MOST_LOOKS, TooMuchWork, Work } from '../expression/work';
import type { World } from '../expression/world';

export interface CheckOptions {
  readonly known: KnownNames;
  /** How many times each question is drawn to see whether it is sound. */
  readonly draws?: number;
}

const USUAL_DRAWS = 3;

/**
 * Everything a lesson's shape cannot say: whether its scripts parse, its expressions make sense, its claims are true, its
 * questions have one right answer, its goals can be reached and are not reached at the start.
 */
export function checkLesson(lesson: Lesson, options: CheckOptions): PlacedFault[] {
  const faults = checkInOneSystem(lesson, options);
  if (faults.length > 0 || !lesson.inFeet) return faults;
  return checkInOneSystem(lessonInFeet(lesson), options).map((fault) => ({
    ...fault,
    what: `In feet: ${fault.what}`,
    mend: `${fault.mend} The figures it has in feet stand under inFeet.`,
  }));
}

function checkInOneSystem(lesson: Lesson, { known, draws = USUAL_DRAWS }: CheckOptions): PlacedFault[] {
  const checker = new Checker(known);
  checkScripts(lesson, checker);
  if (checker.faults.length > 0) return checker.faults;
  // More draws than usual are asked for where there is time.
  const work = new Work(MOST_LOOKS * Math.max(1, draws / USUAL_DRAWS));
  try {
    const worlds = lessonWorld(lesson, work);
    checkMeaning(lesson, worlds, draws, checker);
    // What is told too early is looked for in a lesson that makes sense.
    if (checker.faults.length === 0)
      for (const { path, what, mend, below } of givenAway(lesson, worlds, known.tells))
        checker.fault(path, what, mend, below);
  } catch (stop) {
    if (!(stop instanceof TooMuchWork)) throw stop;
    checker.fault(
      checker.place,
      'Up to here, this lesson asks the engine for more than is worked out for one lesson.',
      'Shorten its dives, ask for fewer values over a whole dive, or split it in two.',
    );
  }
  return checker.faults;
}

function checkMeaning(lesson: Lesson, worlds: LessonWorld, draws: number, checker: Checker): void {
  const about = worlds.about();
  lesson.objectives.forEach((text, i) => checker.prose(['objectives', i], text, about));
  lesson.needs.forEach((text, i) => checker.prose(['needs', i], text, about));
  lesson.cautions.forEach((name, i) => checker.name(['cautions', i], name, checker.known.cautions, 'a caution'));
  if (lesson.opening !== undefined) checker.prose(['opening'], lesson.opening, about);
  const seen = new Set<string>();
  lesson.steps.forEach((step, i) => {
    const path = ['steps', i];
    checker.place = path;
    if (seen.has(step.id))
      checker.fault([...path, 'id'], `Two steps are called ${quoted(step.id)}.`, 'Give each a name of its own.');
    seen.add(step.id);
    const script = 'script' in step ? step.script : step.kind === 'read' ? step.look?.script : undefined;
    if (script !== undefined && !Object.hasOwn(lesson.scripts, script)) {
      checker.name(
        [...path, step.kind === 'read' ? 'look' : 'script'],
        script,
        Object.keys(lesson.scripts),
        'a script of this lesson',
      );
      return;
    }
    const world = worlds.about(script);
    checkCommon(step, path, world, checker);
    checkOwn(step, path, world, checker);
    if (step.kind === 'try') checkTry(step, path, worlds, checker);
    if (step.kind === 'check') {
      const ids = new Set<string>();
      step.questions.forEach((question, q) => {
        const at = [...path, 'questions', q];
        if (ids.has(question.id))
          checker.fault(
            [...at, 'id'],
            `Two questions are called ${quoted(question.id)}.`,
            'Give each a name of its own.',
          );
        ids.add(question.id);
        checkQuestion(question, at, worlds, step.script, draws, checker);
      });
    }
  });
}

function checkScripts(lesson: Lesson, checker: Checker): void {
  for (const { name, errors } of scriptErrors(lesson)) {
    for (const { line, message, mend } of errors) checker.fault(['scripts', name, 'script'], message, mend, line);
  }
  for (const [name, { rules }] of Object.entries(lesson.scripts)) {
    const read = ruleSettingsSchema.safeParse(rules ?? {});
    if (read.success) continue;
    const [issue] = read.error.issues;
    const keys = issue?.code === 'unrecognized_keys' ? issue.keys.map(quoted).join(', ') : undefined;
    checker.fault(
      ['scripts', name, 'rules', ...(issue?.path ?? [])],
      keys
        ? `${keys} is not a rule, or not a setting of this rule.`
        : `This is not a setting of a rule. ${sayIssue(issue!)}.`,
      'See the rules and their settings on the desk.',
    );
  }
}

function checkCommon(step: LessonStep, path: readonly PropertyKey[], world: World, checker: Checker): void {
  checker.prose([...path, 'text'], step.text, world);
  if (step.more !== undefined) checker.prose([...path, 'more'], step.more, world);
  step.claims.forEach((claim, i) => checker.claim([...path, 'claims', i], claim, world));
  step.notes?.ask.forEach((text, i) => checker.prose([...path, 'notes', 'ask', i], text, world));
  step.notes?.wrong.forEach(({ answer, tempts }, i) => {
    checker.prose([...path, 'notes', 'wrong', i, 'answer'], answer, world);
    checker.prose([...path, 'notes', 'wrong', i, 'tempts'], tempts, world);
  });
  if (step.notes?.tip !== undefined) checker.prose([...path, 'notes', 'tip'], step.notes.tip, world);
}

function checkExplain(step: StepOf<'explain'>, path: readonly PropertyKey[], world: World, checker: Checker): void {
  checker.name([...path, 'reading'], step.reading, UNIT_READING_IDS, 'a reading whose working can be opened');
  const reading = UNIT_READING_IDS.find((one) => one === step.reading);
  const atS = checker.moment([...path, 'at'], step.at, world);
  if (reading === undefined || atS === undefined || openedWorking(world.subject, reading, atS)) return;
  checker.fault(
    [...path, 'at'],
    `A unit that is set right does not show ${quoted(reading)} at this moment.`,
    'Choose a moment at which it does, or another reading.',
  );
}

function checkOwn(step: LessonStep, path: readonly PropertyKey[], world: World, checker: Checker): void {
  const { known } = checker;
  const pictures = (show: readonly string[], at: readonly PropertyKey[]) =>
    show.forEach((name, i) => checker.name([...at, i], name, known.pictures, 'a picture'));
  switch (step.kind) {
    case 'read':
      if (!step.look) return;
      pictures(step.look.show, [...path, 'look', 'show']);
      checker.moment([...path, 'look', 'at'], step.look.at, world);
      return;
    case 'predict':
      checkPredict(step, path, world, checker);
      step.given.forEach((source, i) => checker.amount([...path, 'given', i], source, world));
      return;
    case 'run': {
      pictures(step.show, [...path, 'show']);
      step.readings?.forEach((name, i) => checker.name([...path, 'readings', i], name, known.readings, 'a reading'));
      const from = checker.moment([...path, 'from'], step.from, world);
      const to = checker.moment([...path, 'to'], step.to, world);
      if (from !== undefined && to !== undefined && to <= from)
        checker.fault([...path, 'to'], 'The run ends before it begins.', 'Write a later moment in to.');
      step.watch.forEach(({ at, text }, i) => {
        const timeS = checker.moment([...path, 'watch', i, 'at'], at, world);
        if (timeS !== undefined && from !== undefined && to !== undefined && (timeS < from || timeS > to)) {
          checker.fault(
            [...path, 'watch', i, 'at'],
            'This moment is outside the run.',
            'Choose one between from and to.',
          );
        }
        checker.prose([...path, 'watch', i, 'text'], text, world);
      });
      return;
    }
    case 'explain':
      checkExplain(step, path, world, checker);
      return;
    case 'try':
      pictures(step.show, [...path, 'show']);
      if (step.after !== undefined) checker.prose([...path, 'after'], step.after, world);
      return;
    case 'recap':
      step.points.forEach((text, i) => checker.prose([...path, 'points', i], text, world));
      return;
    case 'check':
      return;
  }
}

/** The goal is not met by what the learner begins with, and is met by the script that shows the way. */
function checkTry(step: StepOf<'try'>, path: readonly PropertyKey[], worlds: LessonWorld, checker: Checker): void {
  const world = worlds.about(step.script);
  const before = checker.faults.length;
  const start = judgeCondition(step.goal, world);
  if (!start.ok && start.cause === 'wording') {
    checker.fault([...path, 'goal'], start.what, start.mend);
    return;
  }
  if (start.ok && start.value)
    checker.fault(
      [...path, 'goal'],
      'The script the learner begins with meets this goal already.',
      'Begin with another script, or ask for more.',
    );
  step.hints.forEach(({ when, because }, i) => {
    checker.condition([...path, 'hints', i, 'when'], when, world);
    checker.prose([...path, 'hints', i, 'because'], because, world);
  });
  const parsed = parseScript(step.reach);
  if (!parsed.ok) {
    for (const { line, message, mend } of parsed.errors) checker.fault([...path, 'reach'], message, mend, line);
    return;
  }
  const reached = worlds.aboutDive(subjectOfScript(step.reach, worlds.rulesOf(step.script)));
  const state = goalStateOf(step, world.subject.dive, reached, 'metric');
  step.hints.forEach(({ when }, i) => {
    const so = judgeCondition(when, reached);
    if (so.ok && so.value)
      checker.fault(
        [...path, 'hints', i, 'when'],
        'This hint holds for the dive that meets the goal, so it is about nothing that is missing.',
        'Turn its condition round.',
      );
  });
  if (state.met) {
    if (checker.faults.length === before) checkGoalWords(step, path, world, checker);
    return;
  }
  const missing = state.clauses
    .filter(({ met }) => !met)
    .map(({ text }) => text)
    .join(' ');
  checker.fault([...path, 'reach'], `This script does not meet the goal. ${missing}`, 'Change it until it does.');
}
