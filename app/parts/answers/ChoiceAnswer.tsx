'use client';

import { useId } from 'react';
import { ProseLine } from '../prose/Prose';
import styles from './choice.module.css';

interface ChoiceAnswerProps {
  options: readonly string[];
  chosen: number | undefined;
  onChoose: (option: number) => void;
  disabled?: boolean;
}

/** One of a few answers in words or numbers. */
export function ChoiceAnswer({ options, chosen, onChoose, disabled = false }: ChoiceAnswerProps) {
  const name = useId();
  return (
    <fieldset className={styles.options} disabled={disabled}>
      <legend>Your answer</legend>
      {options.map((html, index) => (
        <label key={index} className={styles.option}>
          <input type="radio" name={name} checked={index === chosen} onChange={() => onChoose(index)} />
          <ProseLine html={html} />
        </label>
      ))}
    </fieldset>
  );
}
