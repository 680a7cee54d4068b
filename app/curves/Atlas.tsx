'use client';

import { useEffect, type ComponentType, type MouseEvent } from 'react';
import { IconButton } from '../parts/IconButton';
import { useUndoKeys } from '../keep/use-undo-keys';
import { useAtlas } from './chosen/atlas-store';
import {
  AscentRateSection,
  GradientFactorSection,
  HalfTimesSection,
  HowSureSection,
  LimitsSection,
  ModelsSection,
  Thumbnail,
} from './plates/LaterPlates';
import { NoStopSection } from './plates/NoStopSection';
import { PLATES, type PlateId } from './chosen/plate-choices';
import styles from './curves.module.css';

const SECTIONS: Readonly<Record<PlateId, ComponentType>> = {
  'no-stop': NoStopSection,
  limits: LimitsSection,
  'half-times': HalfTimesSection,
  'ascent-rate': AscentRateSection,
  'gradient-factors': GradientFactorSection,
  models: ModelsSection,
  'how-sure': HowSureSection,
};

/** What was kept and what the address says are read once the page is there: it answers sooner so. */
function useKept(): void {
  useEffect(() => {
    let gone = false;
    let stop: (() => void) | undefined;
    void import('./chosen/atlas-address')
      .then(({ keepAtlas }) => {
        if (!gone) stop = keepAtlas();
      })
      // Where it can't be had, the first plate stands, and what is chosen lasts until the page is closed.
      .catch(() => undefined);
    return () => {
      gone = true;
      stop?.();
    };
  }, []);
}

/** The model without a dive: seven plates as thumbnails that show what is chosen on them, and one of them open. */
export function Atlas() {
  const plate = useAtlas((state) => state.plate);
  const history = useAtlas((state) => state.history);
  const { open, undo, redo } = useAtlas.getState();
  useKept();
  useUndoKeys(undo, redo);
  const { id, title, lead } = PLATES.find((one) => one.id === plate)!;
  const Section = SECTIONS[plate];
  const press = (to: PlateId) => (event: MouseEvent) => {
    if (event.metaKey || event.ctrlKey || event.shiftKey) return;
    event.preventDefault();
    open(to);
    window.history.pushState(null, '', `#${to}`);
  };
  return (
    <div className={styles.atlas}>
      <header className={styles.head}>
        <h1>Curves</h1>
        <p>The model without a dive: what it says of every depth, rate and limit at once.</p>
        <div className={`${styles.undo} unprinted`}>
          <IconButton icon="undo" label="Undo" disabled={history.past.length === 0} onClick={undo} />
          <IconButton icon="redo" label="Redo" disabled={history.future.length === 0} onClick={redo} />
        </div>
      </header>
      <nav aria-label="Plates" className={`${styles.thumbnails} unprinted`}>
        <ol>
          {PLATES.map((one) => (
            <li key={one.id}>
              <a href={`#${one.id}`} aria-current={one.id === plate ? 'true' : undefined} onClick={press(one.id)}>
                <Thumbnail plate={one.id} />
                <span>{one.title}</span>
              </a>
            </li>
          ))}
        </ol>
      </nav>
      <section id={id} aria-labelledby={`${id}-title`} className={styles.section}>
        <div className={styles.plateHead}>
          <h2 id={`${id}-title`}>{title}</h2>
          <p>{lead}</p>
        </div>
        <Section />
      </section>
    </div>
  );
}
