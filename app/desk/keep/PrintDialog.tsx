'use client';

import { useState } from 'react';
import { cautions } from '@/content/cautions';
import { Button } from '../../parts/Button';
import { Dialog } from '../../parts/Dialog';
import { Segmented } from '../../parts/Segmented';
import { useDesk } from '../../stage/desk-context';
import { usePrintChoice } from './print-times';
import styles from './keep.module.css';

/** What goes on the printed sheet. */
export function PrintDialog({ onClose }: { onClose: () => void }) {
  const { times, drawn, others } = usePrintChoice();
  const covered = useDesk((state) => state.covered.length);
  const [leaving, setLeaving] = useState(false);
  const print = () => {
    // The dialog must be off the page before the page goes to paper.
    setLeaving(true);
    requestAnimationFrame(() => {
      window.print();
      onClose();
    });
  };
  return (
    <Dialog
      open={!leaving}
      onClose={onClose}
      title="Print this dive"
      actions={
        <Button kind="primary" icon="print" onClick={print}>
          Print the sheet
        </Button>
      }
    >
      <div className={styles.passOn}>
        <p className={styles.caution}>{cautions.general}</p>
        <p>One sheet: the dive, its script, and the readings, with the caution at its head.</p>
        <Segmented
          label="Readings"
          segments={[
            { value: 'points', label: 'Where the dive turns' },
            { value: 'even', label: 'At even times' },
          ]}
          value={times}
          onChange={(chosen) => usePrintChoice.setState({ times: chosen })}
        />
        <label className={styles.check}>
          <input
            type="checkbox"
            checked={drawn}
            onChange={(event) => usePrintChoice.setState({ drawn: event.target.checked })}
          />
          With the dive drawn under its ceiling
        </label>
        <label className={styles.check}>
          <input
            type="checkbox"
            checked={others}
            onChange={(event) => usePrintChoice.setState({ others: event.target.checked })}
          />
          With the other pictures on the desk, on sheets of their own
        </label>
        <p>
          {covered === 0
            ? 'Readings you cover are printed as blanks, for a class to fill in.'
            : `${covered === 1 ? 'The covered reading is' : `The ${covered} covered readings are`} printed as blanks, for a class to fill in.`}
        </p>
      </div>
    </Dialog>
  );
}
