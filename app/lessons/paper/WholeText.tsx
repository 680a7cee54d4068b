import { writeStepsInFeet } from '@/lib/dive/edit/write-in-units';
import { drawOf, PaperAxes } from './PaperAxes';
import { PaperHead } from './PaperHead';
import { KIND_WORDS } from '../kind-words';
import type { PredictStep, PreparedLesson, PreparedStep, TryStep } from '../prepared';
import { lessonIn } from '../in-units';
import { Prose, ProseLine, ProseList } from '../../parts/prose/Prose';
import { StepNotes } from '../player/steps/StepNotes';
import { paperQuestions } from './sheet-questions';
import { valueHtml } from '../fillable';
import styles from './paper.module.css';

/** A whole lesson with every answer in place: to be read alone, or by whoever teaches it, with the notes beside. */
export function WholeText({ lesson, notes }: { lesson: PreparedLesson; notes: boolean }) {
  return (
    <div className={styles.paper}>
      <PaperHead lesson={lesson} named={false} />
      {lesson.opening && <Prose html={lesson.opening} />}
      {lesson.steps.map((step) => (
        <section key={step.id} id={step.id} aria-labelledby={`${step.id}-title`} className={styles.step}>
          <p className={styles.kind}>{KIND_WORDS[step.kind]}</p>
          <h2 id={`${step.id}-title`}>{step.title}</h2>
          <Prose html={step.html} />
          {step.more && <Prose html={step.more} />}
          <StepAnswers lesson={lesson} step={step} />
          {notes && step.notes && <StepNotes notes={step.notes} />}
        </section>
      ))}
    </div>
  );
}

function StepAnswers({ lesson, step }: { lesson: PreparedLesson; step: PreparedStep }) {
  switch (step.kind) {
    case 'predict':
      return <PredictAnswers lesson={lesson} step={step} />;
    case 'run':
      return <ProseList lines={step.watch.map(({ html }) => html)} />;
    case 'try':
      return (
        <>
          <p>One way to do it:</p>
          <WayInBoth lesson={lesson} step={step} />
          {step.after && <Prose html={step.after} />}
        </>
      );
    case 'check':
      return (
        <ol className={styles.questions}>
          {paperQuestions(lesson, step).map((asked) => (
            <li key={asked.seed}>
              <Prose html={asked.ask} />
              {asked.options && <JudgedOptions options={asked.options} />}
              {asked.numberHtml && (
                <p className={styles.answer}>
                  <ProseLine html={asked.numberHtml} />
                </p>
              )}
              {asked.after && <Prose html={asked.after} />}
            </li>
          ))}
        </ol>
      );
    case 'recap':
      return <ProseList lines={step.points} />;
    default:
      return null;
  }
}

/** One way to do it, as its script is written in each system of units. */
function WayInBoth({ lesson, step }: { lesson: PreparedLesson; step: TryStep }) {
  const own = lessonIn(lesson, 'imperial').steps.find(({ id }) => id === step.id);
  const feet = lesson.inFeet && own?.kind === 'try' ? own.reach : writeStepsInFeet(step.reach);
  return (
    [
      ['metric', step.reach],
      ['imperial', feet],
    ] as const
  ).map(([system, reach]) => (
    <pre key={system} data-in={system}>
      <code>{reach}</code>
    </pre>
  ));
}

function PredictAnswers({
  lesson,
  step: { id, choice, number, draw, after },
}: {
  lesson: PreparedLesson;
  step: PredictStep;
}) {
  return (
    <>
      {choice && <JudgedOptions options={choice} />}
      {number && (
        <p className={styles.answer}>
          The model says <ProseLine html={valueHtml(number.printed)} />.
        </p>
      )}
      {draw && <PaperAxes draw={draw} inFeet={drawOf(lessonIn(lesson, 'imperial'), id)} answered />}
      <Prose html={after} />
    </>
  );
}

function JudgedOptions({
  options,
}: {
  options: readonly { readonly html: string; readonly right: boolean; readonly because: string }[];
}) {
  return (
    <ul className={styles.options}>
      {options.map(({ html, right, because }, index) => (
        <li key={index}>
          <span>{right ? '✓' : '·'}</span>
          <div>
            <p>
              <ProseLine html={html} />
              {right && <span className="spoken"> This is right.</span>}
            </p>
            <p className={styles.because}>
              <ProseLine html={because} />
            </p>
          </div>
        </li>
      ))}
    </ul>
  );
}
