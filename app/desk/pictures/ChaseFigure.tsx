'use client';

import { printClock } from '@/lib/quantity/duration';
import { printPressure } from '@/lib/quantity/pressure';
import { ChasePicture } from './ChasePicture';
import { leadingCompartment } from './leading';
import { PictureFrame } from './PictureFrame';
import { pressureUnit } from './pressure-axis';
import { breathedInertBar, isPastSurfaceLimit, runnersAt, type Runner } from './runners';
import { usePicture } from './use-picture';
import styles from './pictures.module.css';

const chaseHeight = (width: number) => (width < 560 ? 340 : Math.min(440, Math.max(340, Math.round(width * 0.42))));

export function ChaseFigure() {
  const { ref, ...picture } = usePicture(chaseHeight);
  const { scene, sample, units } = picture;
  const { timeline } = scene;
  const runners = runnersAt(scene, sample);
  const over = runners.filter(isPastSurfaceLimit).length;
  const first = runners[leadingCompartment(scene, sample) - 1]!;
  const unit = pressureUnit(units);
  const bars = (pick: (runner: Runner) => number) => (runner: Runner) => (pick(runner) / unit.bar).toFixed(unit.decimals + 1);

  return (
    <PictureFrame
      id="chase"
      title="The chase"
      sentence={
        `At ${printClock(timeline.timeS[sample]!)} the gas breathed is ${printPressure(breathedInertBar(timeline, sample), units)}. ` +
        `${over === 0 ? 'No compartment is' : over === 1 ? '1 of 16, the lozenge, is' : `${over} of 16, the lozenges, are`} past the limit at the surface; compartment ${first.number} leads.`
      }
      columns={[
        { heading: 'Compartment', cell: (runner: Runner) => runner.number },
        { heading: 'Half-time, min', numeric: true, cell: (runner) => runner.halfTimeMin },
        { heading: `Tension, ${unit.name}`, numeric: true, cell: bars((runner) => runner.tensionBar) },
        ...(timeline.hasHelium ? [{ heading: `of it helium, ${unit.name}`, numeric: true, cell: bars((runner) => runner.heliumBar) }] : []),
        { heading: `Limit here, ${unit.name}`, numeric: true, cell: bars((runner) => runner.limitNowBar) },
        { heading: `Limit at the surface, ${unit.name}`, numeric: true, cell: bars((runner) => runner.limitAtSurfaceBar) },
      ]}
      rows={() => runners}
    >
      <div ref={ref} className={styles.canvas}>
        <ChasePicture {...picture} />
      </div>
    </PictureFrame>
  );
}
