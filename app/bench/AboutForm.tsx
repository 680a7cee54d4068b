'use client';

import { ABOUT_WORDS, sheetAboutSchema, type SheetAbout } from '@/lib/bench/bench-settings';
import { accepted, refused, type Parsed } from '@/lib/quantity/parsed';
import { TypedValue } from '../parts/TypedValue';
import { useBench } from './bench-context';
import styles from './bench.module.css';

const HINTS: Partial<Readonly<Record<keyof SheetAbout, string>>> = {
  date: 'Such as 2026-05-01.',
  gaugeChecked: 'When, and by whom.',
};

/** Whose sheet it is: when, by whom, on what. It goes onto paper and into the file. */
export function AboutForm() {
  const about = useBench((state) => state.about);
  const change = useBench((state) => state.change);
  const names = Object.keys(ABOUT_WORDS) as (keyof SheetAbout)[];
  return (
    <section aria-labelledby="about" className={`${styles.step} ${styles.unprinted}`}>
      <h2 id="about">About this sheet</h2>
      <div className={styles.fields}>
        {names.map((name) => (
          <TypedValue
            key={name}
            label={ABOUT_WORDS[name]}
            shown={about[name]}
            parse={(text) => parseLine(name, text)}
            onValue={(text) => change({ about: { ...about, [name]: text } })}
            {...(HINTS[name] !== undefined && { hint: HINTS[name] })}
          />
        ))}
      </div>
    </section>
  );
}

function parseLine(name: keyof SheetAbout, text: string): Parsed<string> {
  const read = sheetAboutSchema.shape[name].safeParse(text);
  return read.success
    ? accepted(read.data)
    : refused(
        'That is too long for the sheet.',
        name === 'remarks' ? 'Write up to 2000 letters.' : 'Write up to 200 letters.',
      );
}
