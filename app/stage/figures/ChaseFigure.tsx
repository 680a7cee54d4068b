'use client';

import { useId, type MouseEvent } from 'react';
import { printDayClock, sayAtDayClock } from '@/lib/dive/day-clock';
import { printPressure } from '@/lib/quantity/pressure';
import { roundedTo } from '@/lib/quantity/rounding';
import { tellsUnder } from '@/lib/sayings/where';
import { useOpenWhy } from '../../parts/working/open-why';
import { useDesk } from '../desk-context';
import { DeskWhy } from '../why/DeskWhy';
import { ChasePicture } from '../../pictures/chase/ChasePicture';
import { chaseRange, chaseScales } from '../../pictures/chase/chase-scales';
import { leadingCompartment } from '../../pictures/leading';
import { nearest } from '../../pictures/hand/nearest';
import { CompartmentChoice, useCompartment } from './CompartmentChoice';
import { COVERED } from './dive-rows';
import { PictureFrame } from './PictureFrame';
import { pressureUnit } from '../../pictures/axes/pressure-axis';
import { isPastSurfaceLimit, compartmentStatesAt, type CompartmentState } from '../../pictures/compartment-states';
import { useOverlay, useShownWays } from './use-overlay';
import { usePicture } from './use-picture';
import styles from '../../pictures/frame.module.css';
import { breathedInertBar } from '@/lib/ascent/breathed';

const chaseHeight = (width: number) => (width < 560 ? 340 : Math.min(440, Math.max(340, Math.round(width * 0.42))));

export function ChaseFigure() {
  const { ref, ...picture } = usePicture(chaseHeight);
  const ways = useShownWays();
  const overlay = useOverlay();
  const { scene, sample, units } = picture;
  const { timeline } = scene;
  const states = compartmentStatesAt(scene, sample);
  const over = states.filter(isPastSurfaceLimit).length;
  const first = states[leadingCompartment(scene, sample) - 1]!;
  const unit = pressureUnit(units);
  const whyId = useId();
  const looked = useDesk((state) => state.compartment);
  const choose = useDesk((state) => state.chooseCompartment);
  const { compartments } = timeline;
  const tells = tellsUnder(useDesk((state) => state.covered));
  const asked = useCompartment(scene, sample);
  const askAt = (event: MouseEvent<HTMLDivElement>) => {
    const { x, margin } = chaseScales(
      compartments.nitrogenHalfTimeMin,
      chaseRange(scene),
      picture.width,
      picture.height,
    );
    const box = event.currentTarget.getBoundingClientRect();
    const across = ((event.clientX - box.left) * picture.width) / (box.width || 1) - margin.left;
    choose(nearest(states, (state) => Math.abs(x(state.halfTimeMin) - across))!.number);
    useOpenWhy.getState().ask(whyId);
  };
  const bars = (pick: (state: CompartmentState) => number) => (state: CompartmentState) =>
    (pick(state) / unit.bar).toFixed(unit.decimals + 1);

  return (
    <PictureFrame
      id="chase"
      title="The chase"
      sentence={
        `${sayAtDayClock(timeline, timeline.timeS[sample]!)} the gas breathed is ${printPressure(breathedInertBar(timeline, sample), units)}. ` +
        `${over === 0 ? 'No compartment is' : over === 1 ? '1 of 16, the lozenge, is' : `${over} of 16, the lozenges, are`} past the limit at the surface; compartment ${first.number} leads.`
      }
      actions={<CompartmentChoice compartments={compartments} />}
      beside={<DeskWhy id={whyId} reading={`tension-${asked}`} about={`compartment ${asked} holds what it holds`} />}
      columns={[
        {
          heading: `Compartment (${printDayClock(timeline, timeline.timeS[sample]!)})`,
          cell: (state: CompartmentState) => (
            <>
              {state.number}{' '}
              <DeskWhy small reading={`tension-${state.number}`} about={`the tension of compartment ${state.number}`} />
            </>
          ),
        },
        { heading: 'Half-time, min', numeric: true, cell: (state) => state.halfTimeMin },
        { heading: `Tension, ${unit.name}`, numeric: true, cell: bars((state) => state.tensionBar) },
        ...(timeline.hasHelium
          ? [{ heading: `of it helium, ${unit.name}`, numeric: true, cell: bars((state) => state.heliumBar) }]
          : []),
        { heading: `Limit here, ${unit.name}`, numeric: true, cell: bars((state) => state.limitNowBar) },
        {
          heading: `Limit at the surface, ${unit.name}`,
          numeric: true,
          cell: bars((state) => state.limitAtSurfaceBar),
        },
        {
          heading: 'Of the limit at the surface',
          numeric: true,
          cell: tells.leader ? shareOfSurfaceLimit : () => COVERED,
        },
        {
          heading: 'State',
          cell: (state) =>
            [state.number === first.number && 'leads', isPastSurfaceLimit(state) && 'past'].filter(Boolean).join(', '),
        },
      ]}
      rows={() => states}
    >
      <div ref={ref} className={styles.canvas} onClick={askAt}>
        <ChasePicture {...picture} overlay={overlay} ways={ways} looked={looked} />
      </div>
    </PictureFrame>
  );
}

/** In whole per cent; the hundredth is reached only by what is at its limit, and passed by what is past it. */
function shareOfSurfaceLimit(state: CompartmentState): string {
  const percent = (state.tensionBar / state.limitAtSurfaceBar) * 100;
  return `${roundedTo(percent, 0, isPastSurfaceLimit(state) ? 'up' : 'down')}%`;
}
