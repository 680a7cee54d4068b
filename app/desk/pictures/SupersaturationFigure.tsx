'use client';

import { useMemo } from 'react';
import { loadAt } from '@/lib/ascent/figures';
import { supersaturation } from '@/lib/ascent/supersaturation';
import { printClock } from '@/lib/quantity/duration';
import type { TableColumn } from '../../parts/DataTable';
import type { Scene } from '../scene';
import { PictureFrame } from './PictureFrame';
import { sayPercent, SupersaturationPicture } from './SupersaturationPicture';
import { tableSamples } from './table-samples';
import { usePicture } from './use-picture';
import styles from './pictures.module.css';

export function SupersaturationFigure() {
  const { ref, ...picture } = usePicture((width) => (width < 560 ? 280 : 310));
  const { scene, sample } = picture;
  const { timeline, dive } = scene;
  const table = useMemo(() => ({ columns: columnsOf(scene), rows: () => tableSamples(scene.timeline) }), [scene]);
  const { here, surfaced } = bothAt(scene, sample);
  const { high } = dive.settings.gradientFactors;

  return (
    <PictureFrame
      id="supersaturation"
      title="Supersaturation"
      sentence={
        `At ${printClock(timeline.timeS[sample]!)} the highest supersaturation is ${sayPercent(here.value)} at your depth; if you surfaced it would be ${sayPercent(surfaced.value)}` +
        (surfaced.value > high ? `, past the limit of ${sayPercent(high)}.` : '.')
      }
      {...table}
    >
      <div ref={ref} className={styles.canvas}>
        <SupersaturationPicture {...picture} />
      </div>
    </PictureFrame>
  );
}

function bothAt({ timeline }: Scene, sample: number) {
  const load = loadAt(timeline, sample);
  return { here: supersaturation(load, timeline.ambientBar[sample]!), surfaced: supersaturation(load, timeline.surfaceBar) };
}

function columnsOf(scene: Scene): TableColumn<number>[] {
  const percent = (value: number) => `${Math.round(value * 100)} %`;
  return [
    { heading: 'Time', cell: (sample) => printClock(scene.timeline.timeS[sample]!) },
    { heading: 'At your depth', numeric: true, cell: (sample) => percent(bothAt(scene, sample).here.value) },
    { heading: 'Compartment', numeric: true, cell: (sample) => bothAt(scene, sample).here.leader },
    { heading: 'If you surfaced', numeric: true, cell: (sample) => percent(bothAt(scene, sample).surfaced.value) },
    { heading: 'Compartment', numeric: true, cell: (sample) => bothAt(scene, sample).surfaced.leader },
  ];
}
