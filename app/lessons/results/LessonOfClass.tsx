'use client';

import { useMemo } from 'react';
import { cautions } from '@/content/cautions';
import { spreadOfCurves } from '@/lib/class/spread';
import { classResults, type QuestionOfClass } from '@/lib/lesson/class-results';
import { handedInOf, type HandedIn } from '@/lib/files/handed-in';
import type { Answer } from '@/lib/lesson/progress';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import type { Sketch } from '@/lib/lesson/questions/sketch';
import { Button } from '../../parts/Button';
import { DataTable } from '../../parts/DataTable';
import { usePreferences } from '../../parts/preferences';
import { PrintSheet } from '../../parts/PrintSheet';
import { CurvesPicture } from '../../parts/spread/CurvesPicture';
import { Dots } from '../../parts/spread/Dots';
import { fileWords, saveFile } from '../../parts/save-file';
import { drawVerdict, numberReply } from '../player/predict-answers';
import { answerWords, resultRows } from '../player/results';
import { StageWaiting } from '../player/stage/StageWaiting';
import { ProseLine } from '../../parts/prose/Prose';
import { UnitsFrame } from '../../parts/prose/UnitsFrame';
import { lessonIn } from '../in-units';
import type { Html, PredictStep, PreparedLesson } from '../prepared';
import { useLessonText } from '../use-lesson-text';
import { usePrepared } from '../workshop/looks/use-prepared';
import { judgedAnew } from './judged-anew';
import styles from './results.module.css';

interface LessonOfClassProps {
  slug: string;
  title: string;
  /** The lesson itself, where it is not on the shelf. */
  own?: string | undefined;
  papers: readonly HandedIn[];
  known: KnownNames;
}

export function LessonOfClass(props: LessonOfClassProps) {
  const { text, why } = useLessonText(
    props.slug,
    props.own,
    'The papers stay open; choose the lesson again in a moment.',
  );
  if (why !== undefined) return <p role="alert">{why}</p>;
  return text === undefined ? <StageWaiting /> : <PreparedClass {...props} text={text} />;
}

function PreparedClass({ slug, text, papers, known }: LessonOfClassProps & { text: string }) {
  const made = usePrepared({ text, slug, known });
  if (!made) return <StageWaiting />;
  if ('why' in made) return <p role="alert">{made.why}</p>;
  return <ClassSheet lesson={made.lesson} papers={papers} />;
}

/** What a class answered to a lesson, to look at, print or save. */
function ClassSheet({ lesson: given, papers }: { lesson: PreparedLesson; papers: readonly HandedIn[] }) {
  const units = usePreferences((state) => state.units);
  const lesson = useMemo(() => lessonIn(given, units), [given, units]);
  const own = useMemo(() => papers.filter(({ lessons }) => Object.hasOwn(lessons, lesson.slug)), [papers, lesson.slug]);
  const questions = useMemo(
    () =>
      classResults(
        lesson.steps,
        own.map((paper) => judgedAnew(lesson, handedInOf(paper, lesson.slug), units)),
      ),
    [lesson, own, units],
  );
  const sheet = () => (
    <ol className={styles.questions}>
      {questions.map((question) => (
        <li key={`${question.step}/${question.question ?? ''}`}>
          <OneQuestion lesson={lesson} question={question} />
        </li>
      ))}
    </ol>
  );
  const saveCsv = async () => {
    const { default: Papa } = await import('papaparse');
    const rows = own.flatMap((paper, index) =>
      resultRows(lesson, judgedAnew(lesson, handedInOf(paper, lesson.slug), units), units).map((row) => ({
        person: paper.name === '' ? `${index + 1}` : paper.name,
        question: row.step,
        'first answer': row.answer,
        right: row.right === undefined ? '' : row.right ? 'yes' : 'no',
        sure: row.confidence,
        because: row.reason,
        later: row.later,
        'so it is': row.outcome,
      })),
    );
    // What was typed may begin like a formula of a spreadsheet; it is to be read as words.
    const table = Papa.unparse(rows, { escapeFormulae: true });
    saveFile(`halftime-${fileWords(lesson.title)}-class.csv`, `"# ${cautions.general}"\n${table}\n`, 'text/csv');
  };
  return (
    <UnitsFrame>
      <h2>{lesson.title}</h2>
      <p>
        {own.length} {own.length === 1 ? 'paper' : 'papers'} on this lesson. First answers count; those given after
        looking are counted apart.
      </p>
      <AtAGlance lesson={lesson} questions={questions} />
      {sheet()}
      <div className={`${styles.tools} unprinted`}>
        <PrintSheet label="Print" title={`${lesson.title}: results of a class`}>
          {() => (
            <UnitsFrame>
              <AtAGlance lesson={lesson} questions={questions} />
              {sheet()}
            </UnitsFrame>
          )}
        </PrintSheet>
        <Button icon="save" onClick={() => void saveCsv()}>
          Save as CSV
        </Button>
      </div>
    </UnitsFrame>
  );
}

/** How the class stood at each question: where to begin talking. */
function AtAGlance({ lesson, questions }: { lesson: PreparedLesson; questions: readonly QuestionOfClass[] }) {
  return (
    <DataTable
      caption="All questions"
      rows={questions}
      columns={[
        { heading: 'Question', cell: (question) => nameOf(stepOf(lesson, question).title, question) },
        { heading: 'Right at first', numeric: true, cell: ({ right, answered }) => `${right} of ${answered}` },
        { heading: 'At last', numeric: true, cell: ({ rightAtLast }) => String(rightAtLast) },
        {
          heading: 'Commonest reason for another answer',
          cell: ({ wrongReason }) => wrongReason && `“${wrongReason.reason}”, ${wrongReason.count}`,
        },
      ]}
    />
  );
}

function OneQuestion({ lesson, question }: { lesson: PreparedLesson; question: QuestionOfClass }) {
  const units = usePreferences((state) => state.units);
  const step = stepOf(lesson, question);
  const { people, answered, right, looked, rightAtLast, asks } = question;
  return (
    <section aria-label={nameOf(step.title, question)} className={styles.question}>
      <h3>{nameOf(step.title, question)}</h3>
      <p>
        {asks === 'goal'
          ? `${answered} of ${people} met the goal, ${right} of them by a way of their own.`
          : `${answered} of ${people} answered, ${right} of them right at first; ${rightAtLast} right with their last answer.`}
        {looked > 0 && ` ${looked} looked before answering.`}
      </p>
      {step.kind === 'predict' && answered > 0 && (
        <Answers lesson={lesson} step={step} question={question} units={units} />
      )}
    </section>
  );
}

function stepOf(lesson: PreparedLesson, { step }: QuestionOfClass) {
  return lesson.steps.find(({ id }) => id === step)!;
}

function nameOf(title: string, { question }: QuestionOfClass): string {
  return question === undefined ? title : `${title}, question ${question}`;
}

interface AnswersProps {
  lesson: PreparedLesson;
  step: PredictStep;
  question: QuestionOfClass;
  units: 'metric' | 'imperial';
}

function Answers({ lesson, step, question, units }: AnswersProps) {
  const { answers, commonestWrong, numbers, curves, sureness, people } = question;
  return (
    <>
      {step.number && numbers.length > 0 && (
        <Dots
          dimension={step.number.answer.dimension}
          rounds={[numbers]}
          truth={{ value: step.number.answer.value, within: step.number.within, printed: step.number.printed }}
        />
      )}
      {step.draw && curves.length > 0 && (
        <CurvesPicture
          asked={step.draw}
          spreads={[spreadOfCurves(step.draw, curves)]}
          truth={step.draw.truth}
          sketches={[curves]}
        />
      )}
      {step.draw && curves.length > 0 && <Lacked lesson={lesson} step={step} curves={curves} units={units} />}
      {step.draw ? (
        <p>{answers.flatMap(({ reasons }) => reasons.map((reason) => `“${reason}”`)).join(' ')}</p>
      ) : (
        <DataTable
          caption={`Answers to ${step.title}`}
          rows={answers}
          columns={[
            {
              heading: 'Answer',
              cell: ({ answer, right }) => `${right ? '✓' : '≠'} ${answerWords(step, answer, units).answer}`,
            },
            { heading: `Of ${people}`, numeric: true, cell: ({ count }) => String(count) },
            { heading: 'Because', cell: ({ reasons }) => reasons.map((reason) => `“${reason}”`).join(' ') },
          ]}
        />
      )}
      {commonestWrong && (
        <p>
          The commonest wrong answer, by {commonestWrong.count}:{' '}
          <b>{answerWords(step, commonestWrong.answer, units).answer}</b> – the lesson replies:{' '}
          <ProseLine html={replyTo(lesson, step, commonestWrong.answer)} />
        </p>
      )}
      <p className={styles.fine}>
        {sureness
          .filter(({ count }) => count > 0)
          .map(({ confidence, count, right }) => `${count} said “${confidence}”, ${right} of them right`)
          .join('; ')}
        .
      </p>
    </>
  );
}

/** What the lesson says to an answer that is not right. */
function replyTo(lesson: PreparedLesson, step: PredictStep, answer: Answer): Html {
  if (answer.by === 'choice') return step.choice?.[answer.option]?.because ?? '';
  return answer.by === 'number' && step.number ? numberReply(lesson, step, answer.value) : '';
}

/** What of a curve was missing most often. */
function Lacked({
  lesson,
  step,
  curves,
  units,
}: Pick<AnswersProps, 'lesson' | 'step' | 'units'> & { curves: readonly Sketch[] }) {
  const lacked = useMemo(() => {
    const verdicts = curves.map((sketch) => drawVerdict(lesson, step, sketch, units).features);
    return (step.draw?.features ?? [])
      .map(({ name }, i) => ({ name, count: verdicts.filter((features) => !features[i]!.met).length }))
      .filter(({ count }) => count > 0)
      .sort((one, other) => other.count - one.count);
  }, [lesson, step, curves, units]);
  if (lacked.length === 0) return null;
  return <p>Missing from curves: {lacked.map(({ name, count }) => `${name}, ${count}`).join('; ')}.</p>;
}
