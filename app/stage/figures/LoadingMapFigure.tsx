'use client';

import { useMemo, useState } from 'react';
import { loadAt } from '@/lib/ascent/figures';
import { supersaturation, supersaturationOf } from '@/lib/ascent/supersaturation';
import { printDayClock, sayAtDayClock } from '@/lib/dive/day-clock';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import type { TableColumn } from '../../parts/DataTable';
import { Segmented } from '../../parts/Segmented';
import type { Scene } from '../../pictures/scene';
import { LoadingMapPicture } from '../../pictures/tissues/LoadingMapPicture';
import { printPercent } from '@/lib/quantity/percent';
import { PictureFrame } from './PictureFrame';
import { limitAt, type Basis } from '../../pictures/tissues/supersaturation-columns';
import { tableSamples } from '../../pictures/table-samples';
import { usePicture } from './use-picture';
import styles from '../../pictures/frame.module.css';

const SEGMENTS = [
  { value: 'surfacing', label: 'If you surfaced' },
  { value: 'now', label: 'At your depth' },
] as const;

export function LoadingMapFigure() {
  const { ref, ...picture } = usePicture((width) => (width < 560 ? 320 : 350));
  const [basis, setBasis] = useState<Basis>('surfacing');
  const { scene, sample } = picture;
  const table = useMemo(
    () => ({ columns: columnsOf(scene, basis), rows: () => tableSamples(scene.timeline) }),
    [scene, basis],
  );

  return (
    <PictureFrame
      id="loading"
      title="The loading map"
      actions={
        <Segmented label="Supersaturation" labelSpokenOnly segments={SEGMENTS} value={basis} onChange={setBasis} />
      }
      sentence={sentenceAt(scene, sample, basis)}
      {...table}
    >
      <div ref={ref} className={styles.canvas}>
        <LoadingMapPicture {...picture} basis={basis} />
      </div>
    </PictureFrame>
  );
}

function sharesAt({ timeline, figures, dive }: Scene, sample: number, basis: Basis) {
  const load = loadAt(timeline, sample);
  const ambientBar = basis === 'now' ? timeline.ambientBar[sample]! : timeline.surfaceBar;
  const limit = limitAt(timeline.depthM[sample]!, figures.anchorM[sample]!, dive.settings.gradientFactors, basis);
  const shares = Array.from({ length: COMPARTMENTS }, (_, c) => supersaturationOf(load, c, ambientBar));
  return { shares, limit, most: supersaturation(load, ambientBar) };
}

function sentenceAt(scene: Scene, sample: number, basis: Basis): string {
  const { shares, limit, most } = sharesAt(scene, sample, basis);
  const past = shares.filter((share) => share > limit).length;
  const where = basis === 'now' ? 'at your depth' : 'if you surfaced';
  const at = sayAtDayClock(scene.timeline, scene.timeline.timeS[sample]!);
  if (most.value <= 0) return `${at}, ${where}, no compartment is supersaturated.`;
  const leads = `compartment ${most.leader} leads with ${printPercent(most.value)}`;
  return `${at}, ${where}, ${past === 0 ? 'no compartment' : `${past} of 16`} would be past the limit of ${printPercent(limit)}; ${leads}.`.replace(
    'would be',
    basis === 'now' ? (past > 1 ? 'are' : 'is') : 'would be',
  );
}

function columnsOf(scene: Scene, basis: Basis): TableColumn<number>[] {
  const { timeline } = scene;
  let of = -1;
  let now: ReturnType<typeof sharesAt>;
  const at = (sample: number) => {
    if (sample !== of) now = sharesAt(scene, sample, basis);
    of = sample;
    return now;
  };
  return [
    { heading: 'Time', cell: (sample) => printDayClock(timeline, timeline.timeS[sample]!) },
    ...Array.from(timeline.compartments.nitrogenHalfTimeMin, (halfTimeMin, c) => ({
      heading: `${c + 1} (${halfTimeMin} min)`,
      numeric: true,
      cell: (sample: number) => {
        const { shares, limit } = at(sample);
        return `${printPercent(shares[c]!)}${shares[c]! > limit ? ', past' : ''}`;
      },
    })),
  ];
}
