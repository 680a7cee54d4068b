import { KIND_WORDS } from '../kind-words';
import { lessonIn } from '../in-units';
import { drawOf, PaperAxes } from './PaperAxes';
import { PaperHead } from './PaperHead';
import type { PredictStep, PreparedLesson, PreparedStep } from '../prepared';
import { Prose, ProseLine } from '../../parts/prose/Prose';
import { paperQuestions } from './sheet-questions';
import styles from './paper.module.css';

/** The questions of a lesson with room to answer them. */
export function StudentSheet({ lesson }: { lesson: PreparedLesson }) {
  return (
    <div className={styles.paper}>
      <PaperHead lesson={lesson} named />
      {lesson.steps.filter(asks).map((step) => (
        <section key={step.id} aria-labelledby={`${step.id}-title`} className={styles.step}>
          <p className={styles.kind}>{KIND_WORDS[step.kind]}</p>
          <h2 id={`${step.id}-title`}>{step.title}</h2>
          <Prose html={step.html} />
          <Room lesson={lesson} step={step} />
        </section>
      ))}
    </div>
  );
}

function asks({ kind }: PreparedStep): boolean {
  return kind === 'predict' || kind === 'try' || kind === 'check';
}

function Room({ lesson, step }: { lesson: PreparedLesson; step: PreparedStep }) {
  if (step.kind === 'predict') return <PredictRoom lesson={lesson} step={step} />;
  if (step.kind !== 'check') return <div className={styles.lines} aria-label="Room to write" role="img" />;
  return (
    <ol className={styles.questions}>
      {paperQuestions(lesson, step).map((asked) => (
        <li key={asked.seed}>
          <Prose html={asked.ask} />
          {asked.options ? <Boxes options={asked.options.map(({ html }) => html)} /> : <AnswerLine />}
        </li>
      ))}
    </ol>
  );
}

function PredictRoom({ lesson, step: { id, choice, number, draw } }: { lesson: PreparedLesson; step: PredictStep }) {
  return (
    <>
      {choice && <Boxes options={choice.map(({ html }) => html)} />}
      {number && <AnswerLine />}
      {draw && <PaperAxes draw={draw} inFeet={drawOf(lessonIn(lesson, 'imperial'), id)} answered={false} />}
      <p>Because:</p>
      <div className={styles.lines} aria-label="Room to write" role="img" />
      <p>I am: ☐ guessing ☐ fairly sure ☐ sure</p>
    </>
  );
}

function Boxes({ options }: { options: readonly string[] }) {
  return (
    <ul className={styles.options}>
      {options.map((html, index) => (
        <li key={index}>
          <span>☐</span>
          <ProseLine html={html} />
        </li>
      ))}
    </ul>
  );
}

function AnswerLine() {
  return (
    <p className={styles.nameLine}>
      <span>Answer</span>
    </p>
  );
}
