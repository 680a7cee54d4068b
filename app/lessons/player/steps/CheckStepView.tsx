'use client';

import { useEffect, useMemo, useRef, useState } from 'react';
import { withCheck, withDraft, withoutDraft, type Draft } from '@/lib/lesson/progress';
import { Button } from '../../../parts/Button';
import { Disclosure } from '../../../parts/Disclosure';
import { Segmented } from '../../../parts/Segmented';
import type { CheckStep, PreparedLesson, PreparedQuestion } from '../../prepared';
import { Prose, ProseLine } from '../../../parts/prose/Prose';
import { ChoiceAnswer } from '../../../parts/answers/ChoiceAnswer';
import type { AskedQuestion } from '../engine';
import { NumberAnswerBox } from '../../../parts/answers/NumberAnswerBox';
import { useLessonProgress, useProgress } from '../progress-store';
import { StageWaiting } from '../stage/StageWaiting';
import { StepText } from './StepText';
import { useEngine, type Engine } from '../use-engine';
import styles from '../player.module.css';
import stepStyles from './step.module.css';
import outcomes from './outcome.module.css';

/** Questions whose numbers are drawn afresh and worked out by the engine. */
export function CheckStepView({ lesson, step }: { lesson: PreparedLesson; step: CheckStep }) {
  const engine = useEngine();
  const { questions } = step;
  const { checks } = useLessonProgress(lesson.slug);
  const [open, setOpen] = useState(() =>
    Math.max(
      0,
      questions.findIndex(({ id }) => checks[`${step.id}/${id}`] === undefined),
    ),
  );
  const list = useRef<HTMLOListElement>(null);
  const turned = useRef(false);
  useEffect(() => {
    if (turned.current) list.current?.querySelector<HTMLElement>('li:not([hidden])')?.focus();
  }, [open]);
  const goOn = () => {
    turned.current = true;
    setOpen(open + 1);
  };
  return (
    <>
      <StepText step={step} />
      {questions.length > 1 && (
        <Segmented
          label="Question"
          labelSpokenOnly
          segments={questions.map((_, i) => ({ value: String(i), label: String(i + 1) }))}
          value={String(open)}
          onChange={(value) => setOpen(Number(value))}
        />
      )}
      {engine ? (
        <ol ref={list} className={styles.questions}>
          {questions.map((question, i) => (
            <li key={question.id} value={i + 1} hidden={i !== open} tabIndex={-1}>
              <FreshQuestion
                engine={engine}
                lesson={lesson}
                step={step}
                question={question}
                onNext={i < questions.length - 1 ? goOn : undefined}
              />
            </li>
          ))}
        </ol>
      ) : (
        <StageWaiting />
      )}
    </>
  );
}

interface QuestionProps {
  engine: Engine;
  lesson: PreparedLesson;
  step: CheckStep;
  question: PreparedQuestion;
  /** To the next question; undefined after the last. */
  onNext: (() => void) | undefined;
}

const SEEDS = 1_000_000;
const freshSeed = () => 1 + Math.floor(Math.random() * SEEDS);

function FreshQuestion(props: QuestionProps) {
  const { engine, lesson, step, question } = props;
  const update = useProgress((state) => state.update);
  const key = `${step.id}/${question.id}`;
  const kept = useLessonProgress(lesson.slug).drafts[key]?.seed;
  const [seed, setSeed] = useState(() => kept ?? freshSeed());
  const another = () => {
    update((before) => withoutDraft(before, lesson.slug, key));
    setSeed(freshSeed());
  };
  const asked = useMemo(() => engine.askQuestion(lesson, step, question, seed), [engine, lesson, step, question, seed]);
  return <OneQuestion key={seed} {...props} asked={asked} onAnother={another} />;
}

interface Given {
  readonly right: boolean;
  readonly because: string | undefined;
  readonly answer: string | undefined;
}

function OneQuestion({
  engine,
  lesson,
  step,
  question,
  asked,
  onAnother,
  onNext,
}: QuestionProps & { asked: AskedQuestion; onAnother: () => void }) {
  const update = useProgress((state) => state.update);
  const key = `${step.id}/${question.id}`;
  const own = useLessonProgress(lesson.slug);
  const record = own.checks[key];
  const [begun] = useState(() => own.drafts[key]);
  const [chosen, setChosen] = useState(begun?.answer?.by === 'choice' ? begun.answer.option : undefined);
  const [typed, setTyped] = useState(begun?.answer?.by === 'number' ? begun.answer.value : undefined);
  // Kept with the numbers it was given to, so that a reload asks the same.
  const keep = (draft: Draft) =>
    update((before) => withDraft(before, lesson.slug, key, { ...draft, seed: asked.seed }));
  const [given, setGiven] = useState<Given>();
  const [told, setTold] = useState('');
  const verdict = useRef<HTMLParagraphElement>(null);
  // The button that was pressed is gone: the verdict is brought into sight and read out.
  useEffect(() => {
    if (given) verdict.current?.focus();
  }, [given]);

  const submit = () => {
    const judged = judge(engine, asked, question, chosen, typed);
    if (!judged) {
      setTold('Answer the question first.');
      return;
    }
    setGiven(judged);
    update((before) => withCheck(before, lesson.slug, step.id, question.id, asked.seed, judged.right));
  };

  return (
    <form
      className={styles.question}
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <Prose html={asked.ask} />
      {asked.script && (
        <Disclosure summary="The dive as a script">
          <pre>
            <code>{asked.script}</code>
          </pre>
        </Disclosure>
      )}
      {asked.options ? (
        <ChoiceAnswer
          options={asked.options.map(({ html }) => html)}
          chosen={chosen}
          onChoose={(option) => {
            setChosen(option);
            keep({ answer: { by: 'choice', option } });
          }}
          disabled={given !== undefined}
        />
      ) : (
        !given && (
          <NumberAnswerBox
            dimension={asked.number!.answer.dimension}
            begun={begun?.text}
            onNumber={(value, text) => {
              setTyped(value);
              keep({ text, answer: value === undefined ? undefined : { by: 'number', value } });
            }}
          />
        )
      )}
      {given ? (
        <div>
          <p ref={verdict} className={outcomes.verdict} data-right={given.right} tabIndex={-1}>
            <span aria-hidden="true">{given.right ? '✓' : '≠'}</span> {given.right ? 'Right.' : 'Not so.'}
            {given.answer && !question.choice && (
              <>
                {' '}
                The answer is <ProseLine html={given.answer} />.
              </>
            )}
            {given.answer && question.choice && !given.right && (
              <>
                {' '}
                Right is: <ProseLine html={given.answer} />
              </>
            )}
          </p>
          {given.because && (
            <p className={outcomes.because}>
              <ProseLine html={given.because} />
            </p>
          )}
          {asked.after && <Prose html={asked.after} />}
        </div>
      ) : (
        <p role="status">{told}</p>
      )}
      <div className={stepStyles.askingFoot}>
        {given ? (
          <>
            {onNext && (
              <Button kind="primary" onClick={onNext}>
                Next question
              </Button>
            )}
            <Button onClick={onAnother}>
              Ask me again{Object.keys(question.question.draws).length > 0 ? ', with other numbers' : ''}
            </Button>
          </>
        ) : (
          <Button kind="primary" type="submit">
            Check
          </Button>
        )}
        {record && (
          <p className={styles.tally}>
            {record.rights} of {record.tries} right so far
            {record.tries > 1 &&
              record.firstRight !== undefined &&
              `, the first ${record.firstRight ? 'right' : 'not'}`}
          </p>
        )}
      </div>
    </form>
  );
}

/** Why an answer is not right, then why another is; a sentence that stands in both is said once. */
function saidOnce(why: string, whyRight: string): string {
  const said = new Set(whyRight.split(SENTENCES));
  return [...why.split(SENTENCES).filter((sentence) => !said.has(sentence)), whyRight].join(' ');
}

const SENTENCES = /(?<=[.?]) /;

function judge(
  engine: Engine,
  asked: AskedQuestion,
  question: PreparedQuestion,
  chosen: number | undefined,
  typed: number | undefined,
): Given | undefined {
  if (asked.options) {
    const option = chosen === undefined ? undefined : asked.options[chosen];
    if (!option) return undefined;
    const right = asked.options.find((one) => one.right)!;
    return {
      right: option.right,
      because: option.right ? option.because : saidOnce(option.because, right.because),
      answer: option.right ? undefined : right.html,
    };
  }
  return typed === undefined ? undefined : engine.answerNumber(asked, question, typed);
}
