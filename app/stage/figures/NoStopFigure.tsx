'use client';

import { useMemo } from 'react';
import { printDepth } from '@/lib/quantity/depth';
import { printClock } from '@/lib/quantity/duration';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { TableColumn } from '../../parts/DataTable';
import { noStopText } from '../../pictures/print-figures';
import type { Scene } from '../../pictures/scene';
import { NoStopPicture } from '../../pictures/tissues/NoStopPicture';
import { PictureFrame } from './PictureFrame';
import { tableSamples } from '../../pictures/table-samples';
import { usePicture } from './use-picture';
import styles from '../../pictures/pictures.module.css';

export function NoStopFigure() {
  const { ref, ...picture } = usePicture((width) => (width < 560 ? 230 : 250));
  const { scene, sample, units } = picture;
  const table = useMemo(
    () => ({ columns: columnsOf(scene, units), rows: () => tableSamples(scene.timeline) }),
    [scene, units],
  );

  return (
    <PictureFrame id="no-stop" title="No-stop time" sentence={sentenceAt(scene, sample)} {...table}>
      <div ref={ref} className={styles.canvas}>
        <NoStopPicture {...picture} />
      </div>
    </PictureFrame>
  );
}

function sentenceAt({ timeline, figures }: Scene, sample: number): string {
  const time = printClock(timeline.timeS[sample]!);
  const leader = figures.noStopLeader[sample]!;
  if (figures.ceilingM[sample]! > 0)
    return `At ${time} a stop is required: compartment ${leader} is past its limit at the surface.`;
  const minutes = figures.noStopMin[sample]!;
  if (minutes === Infinity)
    return `At ${time} no compartment will reach its limit at this depth, however long you stay.`;
  return `At ${time} you may stay ${noStopText(minutes)} min here before you need a stop on the way up; compartment ${leader} sets it.`.replace(
    '>',
    'more than ',
  );
}

function columnsOf({ timeline, figures }: Scene, units: UnitSystem): TableColumn<number>[] {
  return [
    { heading: 'Time', cell: (sample) => printClock(timeline.timeS[sample]!) },
    { heading: 'Depth', numeric: true, cell: (sample) => printDepth(timeline.depthM[sample]!, units) },
    {
      heading: 'No-stop time, min',
      numeric: true,
      cell: (sample) => (figures.ceilingM[sample]! > 0 ? '0, stop required' : noStopText(figures.noStopMin[sample]!)),
    },
    { heading: 'Set by compartment', numeric: true, cell: (sample) => figures.noStopLeader[sample] || 'none' },
  ];
}
