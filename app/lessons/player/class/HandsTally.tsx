'use client';

import { IconButton } from '../../../parts/IconButton';
import type { Html } from '../../prepared';
import { ProseLine } from '../../../parts/prose/Prose';
import { useClassAnswers } from './class-answers';
import styles from './class-lesson.module.css';

interface HandsTallyProps {
  /** Under which the hands are kept while pages are turned. */
  name: string;
  options: readonly Html[];
  /** The right one, once it is uncovered. */
  right: number | undefined;
  because: readonly Html[] | undefined;
}

/** Answers with the hands counted for each. */
export function HandsTally({ name, options, right, because }: HandsTallyProps) {
  const { hands: kept, change } = useClassAnswers(name);
  const hands = options.map((_, index) => kept[index] ?? 0);
  const most = Math.max(1, ...hands);
  const count = (index: number, by: number) => change({ hands: { ...kept, [index]: Math.max(0, hands[index]! + by) } });
  return (
    <ol className={styles.tally}>
      {options.map((html, index) => (
        <li key={index} data-right={index === right}>
          <span className={styles.letter}>{String.fromCharCode(65 + index)}</span>
          <div>
            <p>
              <ProseLine html={html} />
              {index === right && <b> ✓</b>}
            </p>
            {because && (
              <p className={styles.because}>
                <ProseLine html={because[index]!} />
              </p>
            )}
            <div className={styles.handsBar} aria-hidden="true">
              <span style={{ inlineSize: `${(hands[index]! / most) * 100}%` }} />
            </div>
          </div>
          <div className={styles.hands} role="group" aria-label={`Hands for ${String.fromCharCode(65 + index)}`}>
            <IconButton
              icon="minus"
              label="One hand less"
              disabled={hands[index] === 0}
              onClick={() => count(index, -1)}
            />
            <output>{hands[index]}</output>
            <IconButton icon="plus" label="One hand more" onClick={() => count(index, 1)} />
          </div>
        </li>
      ))}
    </ol>
  );
}
