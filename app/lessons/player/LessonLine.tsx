import type { ReactNode } from 'react';
import { Menu } from '../../parts/Menu';
import { Navigation } from '../../parts/Navigation';
import { PreferenceSwitches } from '../../parts/PreferenceSwitches';
import { Wordmark } from '../../parts/Wordmark';
import styles from './player.module.css';

interface LessonLineProps {
  title: string;
  /** Whether the lesson has the window to itself, and this is the only way to other screens. */
  alone: boolean;
  /** The way to the steps. */
  steps: ReactNode;
  /** What else can be done with the lesson. */
  tools: ReactNode;
}

/** The one line over a lesson: other screens, which lesson and step this is, and tools folded away. */
export function LessonLine({ title, alone, steps, tools }: LessonLineProps) {
  return (
    <div className={styles.line}>
      {alone && (
        <>
          <Menu icon="rooms" label="Screens">
            <Navigation />
          </Menu>
          <span className={styles.brand}>
            <Wordmark />
          </span>
          <h1>{title}</h1>
        </>
      )}
      {steps}
      <Menu icon="more" label="Tools of this lesson">
        <div className={styles.tools}>{tools}</div>
        {alone && <PreferenceSwitches />}
      </Menu>
    </div>
  );
}
