'use client';

import { useMemo, useState } from 'react';
import { Button } from '../../../parts/Button';
import type { CheckStep, PreparedLesson, PreparedQuestion } from '../../prepared';
import { Prose, ProseLine } from '../../../parts/prose/Prose';
import { HandsTally } from './HandsTally';
import { StageWaiting } from '../stage/StageWaiting';
import { useEngine, type Engine } from '../use-engine';
import styles from './class-lesson.module.css';

interface ClassCheckProps {
  lesson: PreparedLesson;
  step: CheckStep;
  shown: boolean;
}

/** Questions for a class, their answers covered. */
export function ClassCheck({ lesson, step, shown }: ClassCheckProps) {
  const engine = useEngine();
  const [seed, setSeed] = useState(1);
  if (!engine) return <StageWaiting />;
  return (
    <>
      {step.questions.map((question) => (
        <ClassQuestion
          key={`${question.id} ${seed}`}
          engine={engine}
          lesson={lesson}
          step={step}
          question={question}
          seed={seed}
          shown={shown}
        />
      ))}
      <Button onClick={() => setSeed((before) => before + 1)}>Other numbers</Button>
    </>
  );
}

interface ClassQuestionProps extends ClassCheckProps {
  engine: Engine;
  question: PreparedQuestion;
  seed: number;
}

function ClassQuestion({ engine, lesson, step, question, seed, shown }: ClassQuestionProps) {
  const asked = useMemo(() => engine.askQuestion(lesson, step, question, seed), [engine, lesson, step, question, seed]);
  return (
    <div className={styles.question}>
      <Prose html={asked.ask} />
      {asked.options && (
        <HandsTally
          name={`${lesson.slug} ${step.id}/${question.id} ${seed}`}
          options={asked.options.map(({ html }) => html)}
          right={shown ? asked.options.findIndex(({ right }) => right) : undefined}
          because={shown ? asked.options.map(({ because }) => because) : undefined}
        />
      )}
      {asked.numberHtml && shown && (
        <p className={styles.answer}>
          The model says <ProseLine html={asked.numberHtml} />.
        </p>
      )}
      {shown && asked.after && <Prose html={asked.after} />}
    </div>
  );
}
