'use client';

import { useMemo } from 'react';
import { loadAt } from '@/lib/ascent/figures';
import { supersaturation } from '@/lib/ascent/supersaturation';
import { printDayClock, sayAtDayClock } from '@/lib/dive/day-clock';
import type { TableColumn } from '../../parts/DataTable';
import type { Scene } from '../../pictures/scene';
import { PictureFrame } from './PictureFrame';
import { printPercent } from '@/lib/quantity/percent';
import { SupersaturationPicture } from '../../pictures/tissues/SupersaturationPicture';
import { tableSamples } from '../../pictures/table-samples';
import { usePicture } from './use-picture';
import styles from '../../pictures/frame.module.css';

export function SupersaturationFigure() {
  const { ref, ...picture } = usePicture((width) => (width < 560 ? 280 : 310));
  const { scene, sample } = picture;
  const table = useMemo(() => ({ columns: columnsOf(scene), rows: () => tableSamples(scene.timeline) }), [scene]);

  return (
    <PictureFrame id="supersaturation" title="Supersaturation" sentence={sentenceAt(scene, sample)} {...table}>
      <div ref={ref} className={styles.canvas}>
        <SupersaturationPicture {...picture} />
      </div>
    </PictureFrame>
  );
}

function bothAt({ timeline }: Scene, sample: number) {
  const load = loadAt(timeline, sample);
  return {
    here: supersaturation(load, timeline.ambientBar[sample]!),
    surfaced: supersaturation(load, timeline.surfaceBar),
  };
}

function sentenceAt(scene: Scene, sample: number): string {
  const { here, surfaced } = bothAt(scene, sample);
  const { high } = scene.dive.settings.gradientFactors;
  const at = sayAtDayClock(scene.timeline, scene.timeline.timeS[sample]!);
  if (surfaced.value <= 0) return `${at} no compartment is supersaturated, and none would be if you surfaced.`;
  const now =
    here.value <= 0
      ? 'no compartment is supersaturated at your depth'
      : `the highest supersaturation is ${printPercent(here.value)} at your depth`;
  return `${at} ${now}; if you surfaced it would be ${printPercent(surfaced.value)}${surfaced.value > high ? `, past the limit of ${printPercent(high)}` : ''}.`.replace(
    'it would be',
    here.value <= 0 ? 'the highest would be' : 'it would be',
  );
}

function columnsOf(scene: Scene): TableColumn<number>[] {
  return [
    { heading: 'Time', cell: (sample) => printDayClock(scene.timeline, scene.timeline.timeS[sample]!) },
    { heading: 'At your depth', numeric: true, cell: (sample) => printPercent(bothAt(scene, sample).here.value) },
    { heading: 'Compartment', numeric: true, cell: (sample) => bothAt(scene, sample).here.leader },
    { heading: 'If you surfaced', numeric: true, cell: (sample) => printPercent(bothAt(scene, sample).surfaced.value) },
    { heading: 'Compartment', numeric: true, cell: (sample) => bothAt(scene, sample).surfaced.leader },
  ];
}
