'use client';

import { useMemo } from 'react';
import { printDayClock, sayAtDayClock } from '@/lib/dive/day-clock';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { partsAs, printAs } from '@/lib/sayings/measures';
import { standingOf } from '@/lib/sayings/model-readings';
import { sayStanding } from '@/lib/sayings/stop-state';
import type { TableColumn } from '../../parts/DataTable';
import type { Scene } from '../../pictures/scene';
import { NoStopPicture } from '../../pictures/tissues/NoStopPicture';
import { modelMomentOf } from '../model-moment';
import { PictureFrame } from './PictureFrame';
import { tableSamples } from '../../pictures/table-samples';
import { usePicture } from './use-picture';
import styles from '../../pictures/frame.module.css';

export function NoStopFigure() {
  const { ref, ...picture } = usePicture((width) => (width < 560 ? 230 : 250));
  const { scene, sample, units } = picture;
  const table = useMemo(
    () => ({ columns: columnsOf(scene, units), rows: () => tableSamples(scene.timeline) }),
    [scene, units],
  );

  return (
    <PictureFrame id="no-stop" title="No-stop time" sentence={sentenceAt(scene, sample, units)} {...table}>
      <div ref={ref} className={styles.canvas}>
        <NoStopPicture {...picture} />
      </div>
    </PictureFrame>
  );
}

function sentenceAt(scene: Scene, sample: number, units: UnitSystem): string {
  const { timeline, figures } = scene;
  const leader = figures.noStopLeader[sample]!;
  const standing = sayStanding(standingOf(modelMomentOf(scene, sample)), units);
  return `${sayAtDayClock(timeline, timeline.timeS[sample]!)}: ${standing}${leader > 0 ? ` Compartment ${leader} sets it.` : ''}`;
}

function columnsOf({ timeline, figures }: Scene, units: UnitSystem): TableColumn<number>[] {
  return [
    { heading: 'Time', cell: (sample) => printDayClock(timeline, timeline.timeS[sample]!) },
    { heading: 'Depth', numeric: true, cell: (sample) => printAs('depth', timeline.depthM[sample]!, units) },
    {
      heading: 'No-stop time, min',
      numeric: true,
      cell: (sample) =>
        `${partsAs('noStopMin', figures.noStopMin[sample]!, units)[0]}${figures.ceilingM[sample]! > 0 ? ', ceiling' : ''}`,
    },
    { heading: 'Set by compartment', numeric: true, cell: (sample) => figures.noStopLeader[sample] || 'none' },
  ];
}
