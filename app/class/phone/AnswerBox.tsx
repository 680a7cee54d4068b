'use client';

import { useState } from 'react';
import type { ClassAnswer } from '@/lib/class/answer';
import { MOST_SKETCH_POINTS } from '@/lib/class/bounds';
import type { Ask } from '@/lib/class/ask';
import { inUnits } from '@/lib/class/words';
import type { Sketch } from '@/lib/lesson/questions/sketch';
import { ChoiceAnswer } from '../../parts/answers/ChoiceAnswer';
import { NumberAnswerBox } from '../../parts/answers/NumberAnswerBox';
import { rounded } from '../../parts/answers/rounded';
import { SketchPad } from '../../parts/answers/SketchPad';
import { answerUnit } from '@/lib/lesson/typed-answer';
import { usePreferences } from '../../parts/preferences';
import { drawAskedOf } from '../../parts/spread/axes-asked';
import { answer } from './phone-line';
import styles from './phone.module.css';

interface AnswerBoxProps {
  ask: Ask;
  optionsHtml: readonly string[] | undefined;
  /** What was answered before. */
  given: ClassAnswer | undefined;
}

/** Where a question is answered by a finger, or by keys. */
export function AnswerBox({ ask, optionsHtml, given }: AnswerBoxProps) {
  switch (ask.by) {
    case 'choice':
      return (
        <OptionAnswer ask={ask} optionsHtml={optionsHtml} chosen={given?.by === 'choice' ? given.option : undefined} />
      );
    case 'number':
      return <NumberAnswer ask={ask} given={given?.by === 'number' ? given.value : undefined} />;
    case 'leader':
      return <LeaderAnswer chosen={given?.by === 'leader' ? given.compartment : undefined} />;
    case 'draw':
      return <DrawnAnswer ask={ask} given={given?.by === 'draw' ? given.sketch : []} />;
  }
}

interface OptionAnswerProps {
  ask: Extract<Ask, { by: 'choice' }>;
  optionsHtml: readonly string[] | undefined;
  chosen: number | undefined;
}

function OptionAnswer({ ask, optionsHtml, chosen }: OptionAnswerProps) {
  const units = usePreferences((state) => state.units);
  return (
    <ChoiceAnswer
      options={optionsHtml ?? ask.options.map((option) => escaped(inUnits(option, units)))}
      chosen={chosen}
      onChoose={(option) => answer({ by: 'choice', option })}
    />
  );
}

function NumberAnswer({ ask, given }: { ask: Extract<Ask, { by: 'number' }>; given: number | undefined }) {
  const units = usePreferences((state) => state.units);
  const { size } = answerUnit(ask.dimension, units);
  return (
    <NumberAnswerBox
      dimension={ask.dimension}
      begun={given === undefined ? '' : rounded(given / size)}
      onNumber={(value) => value !== undefined && Math.abs(value) <= 1e6 && answer({ by: 'number', value })}
    />
  );
}

/** The sixteen to choose from, fast to slow. */
function LeaderAnswer({ chosen }: { chosen: number | undefined }) {
  return (
    <fieldset className={styles.sixteen}>
      <legend>The compartment that leads, from the fastest, 1, to the slowest, 16</legend>
      {Array.from({ length: 16 }, (_, i) => (
        <label key={i}>
          <input
            type="radio"
            name="leader"
            checked={chosen === i + 1}
            onChange={() => answer({ by: 'leader', compartment: i + 1 })}
          />
          {i + 1}
        </label>
      ))}
    </fieldset>
  );
}

function DrawnAnswer({ ask, given }: { ask: Extract<Ask, { by: 'draw' }>; given: Sketch }) {
  const [sketch, setSketch] = useState<Sketch>(given);
  return (
    <SketchPad
      asked={drawAskedOf(ask)}
      sketch={sketch}
      onSketch={(drawn) => {
        setSketch(drawn);
        if (drawn.length > 0) answer({ by: 'draw', sketch: thinned(drawn) });
      }}
    />
  );
}

/** No more points than travel, both ends among them. */
function thinned(sketch: Sketch): { timeS: number; value: number }[] {
  const every = Math.max(1, (sketch.length - 1) / (MOST_SKETCH_POINTS - 1));
  const kept = new Set(
    Array.from({ length: Math.min(sketch.length, MOST_SKETCH_POINTS) }, (_, i) => Math.round(i * every)),
  );
  return sketch
    .filter((_, i) => kept.has(i))
    .map(({ timeS, value }) => ({ timeS: Math.round(timeS * 10) / 10, value: Math.round(value * 1000) / 1000 }));
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
