'use client';

import { useState } from 'react';
import { sayAtDayClock } from '@/lib/dive/day-clock';
import { printPressure } from '@/lib/quantity/pressure';
import { CompartmentChoice, useCompartment } from './CompartmentChoice';
import { PictureFrame } from './PictureFrame';
import { pressureUnit } from '../../pictures/axes/pressure-axis';
import { PressurePicture } from '../../pictures/tissues/PressurePicture';
import { isPastSurfaceLimit, compartmentStatesAt, type CompartmentState } from '../../pictures/compartment-states';
import { usePicture } from './use-picture';
import styles from '../../pictures/frame.module.css';

const pressureHeight = (width: number) => (width < 560 ? 360 : Math.min(480, Math.max(380, Math.round(width * 0.56))));

export function PressureFigure() {
  const { ref, ...picture } = usePicture(pressureHeight);
  const [all, setAll] = useState(false);
  const { scene, sample, units } = picture;
  const { timeline } = scene;
  const compartment = useCompartment(scene, sample);
  const states = compartmentStatesAt(scene, sample);
  const one = states[compartment - 1]!;
  const unit = pressureUnit(units);
  const bars = (pick: (state: CompartmentState) => number) => (state: CompartmentState) =>
    (pick(state) / unit.bar).toFixed(unit.decimals + 1);
  const over = states.filter(isPastSurfaceLimit).length;

  return (
    <PictureFrame
      id="pressure"
      title="Pressure against pressure"
      actions={<CompartmentChoice compartments={timeline.compartments} all={all} onAll={setAll} />}
      sentence={
        `${sayAtDayClock(timeline, timeline.timeS[sample]!)} the pressure around you is ${printPressure(timeline.ambientBar[sample]!, units)}. ` +
        (all
          ? `${over === 0 ? 'No compartment is' : over === 1 ? 'One compartment, the lozenge, is' : `${over} compartments, the lozenges, are`} past the limit at the surface.`
          : `Compartment ${one.number} holds ${printPressure(one.tensionBar, units)} of gas and tolerates ${printPressure(one.limitNowBar, units)} here.`)
      }
      columns={[
        { heading: 'Compartment', cell: (state: CompartmentState) => state.number },
        { heading: `Ambient, ${unit.name}`, numeric: true, cell: bars(() => timeline.ambientBar[sample]!) },
        { heading: `Gas in it, ${unit.name}`, numeric: true, cell: bars((state) => state.tensionBar) },
        { heading: `Limit here, ${unit.name}`, numeric: true, cell: bars((state) => state.limitNowBar) },
        {
          heading: `Limit at the surface, ${unit.name}`,
          numeric: true,
          cell: bars((state) => state.limitAtSurfaceBar),
        },
      ]}
      rows={() => (all ? states : [one])}
    >
      <div ref={ref} className={styles.canvas}>
        <PressurePicture {...picture} compartment={compartment} all={all} />
      </div>
    </PictureFrame>
  );
}
