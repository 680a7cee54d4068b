'use client';

import { useState, type DragEvent } from 'react';
import { Button } from '../../parts/Button';
import { Disclosure } from '../../parts/Disclosure';
import { divePageIn } from '../../parts/page-in-file';
import { deskWith } from '../../parts/routes';
import { useBring } from '../bring-context';
import styles from '../bring.module.css';

/** An invented record to try. */
export interface SampleFile {
  readonly name: string;
  readonly title: string;
  readonly text: string;
}

/** A file chosen, dropped or pasted. It stays in this browser. */
export function ChooseFile({ samples }: { samples: readonly SampleFile[] }) {
  const choose = useBring((state) => state.choose);
  const fileName = useBring((state) => state.fileName);
  const [over, setOver] = useState(false);
  const [pasted, setPasted] = useState('');
  const [presses, setPresses] = useState(0);
  const empty = pasted.trim() === '';
  const inVain = empty && presses > 0;
  // A dive saved as a page of its own is no record: the desk it was saved from opens.
  const take = async (file: File) => {
    const fragment = await divePageIn(file);
    if (fragment === undefined) await choose(file, file.name);
    else location.assign(deskWith(fragment));
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const file = event.dataTransfer.files[0];
    if (file) void take(file);
  };
  return (
    <section aria-labelledby="choose" className={`${styles.step} unprinted`}>
      <h2 id="choose">The file</h2>
      <div
        className={over ? styles.dropOver : styles.drop}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={drop}
      >
        <label className={styles.pick}>
          <span>Choose a UDDF or CSV file, or drop it here</span>
          <input
            type="file"
            accept=".uddf,.xml,.csv,.tsv,.txt,.html,text/csv,text/html,text/plain,application/xml"
            onChange={(event) => {
              const file = event.target.files?.[0];
              if (file) void take(file);
              // The same file may be chosen again after it was mended.
              event.target.value = '';
            }}
          />
        </label>
        <p>
          It is read here and sent nowhere. Up to a million samples, any separator, decimal points or commas. A dive
          saved as a page of its own opens on the desk.
        </p>
        {fileName !== '' && (
          <p>
            Now open: <strong>{fileName}</strong>
          </p>
        )}
      </div>
      <div className={styles.row}>
        {samples.map((sample) => (
          <Button key={sample.name} onClick={() => void choose(new Blob([sample.text]), sample.name)}>
            {sample.title}
          </Button>
        ))}
      </div>
      <Disclosure summary="Paste text instead">
        <form
          className={styles.paste}
          onSubmit={(event) => {
            event.preventDefault();
            setPresses(presses + 1);
            if (empty) event.currentTarget.querySelector('textarea')?.focus();
            else void choose(new Blob([pasted]), 'Pasted text');
          }}
        >
          <label htmlFor="pasted">Rows of a record, with or without headings</label>
          <textarea
            id="pasted"
            rows={6}
            value={pasted}
            spellCheck={false}
            aria-invalid={inVain || undefined}
            aria-describedby={inVain ? 'pasted-fault' : undefined}
            onChange={(event) => setPasted(event.target.value)}
          />
          {inVain && (
            <p key={presses} id="pasted-fault" role="alert" className={styles.trouble}>
              Nothing is pasted yet. Paste the rows of a record here first.
            </p>
          )}
          <Button type="submit">Read the pasted text</Button>
        </form>
      </Disclosure>
    </section>
  );
}
