'use client';

import '../../../parts/formulas.css';
import { useState } from 'react';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import { PrintSheet } from '../../../parts/PrintSheet';
import { UnitsFrame } from '../../../parts/prose/UnitsFrame';
import { Segmented } from '../../../parts/Segmented';
import { Watermarked } from '../../../parts/Watermarked';
import { StageWaiting } from '../../player/stage/StageWaiting';
import { StudentSheet } from '../../paper/StudentSheet';
import { WholeText } from '../../paper/WholeText';
import { usePrepared } from './use-prepared';

const SHEETS = [
  { value: 'sheet', label: 'Student sheet' },
  { value: 'key', label: 'Answer key' },
] as const;

/** A lesson of one's own on paper: the questions with room to answer, or all of it with answers and notes. */
export function OwnPaper({ text, known }: { text: string; known: KnownNames }) {
  const [sheet, setSheet] = useState<(typeof SHEETS)[number]['value']>('sheet');
  const made = usePrepared({ text, slug: 'on-paper', known });
  if (!made) return <StageWaiting />;
  if ('why' in made) return <p role="alert">{made.why}</p>;
  const { lesson } = made;
  const paper = () => (
    <UnitsFrame>
      {sheet === 'sheet' ? <StudentSheet lesson={lesson} /> : <WholeText lesson={lesson} notes />}
    </UnitsFrame>
  );
  return (
    <>
      <Segmented label="Sheet" labelSpokenOnly segments={SHEETS} value={sheet} onChange={setSheet} />
      <div>
        <PrintSheet label="Print it" title={lesson.title}>
          {paper}
        </PrintSheet>
      </div>
      <Watermarked>{paper()}</Watermarked>
    </>
  );
}
