'use client';

import { memo, useId, useState, type MouseEvent } from 'react';
import { printDayClock, sayAtDayClock } from '@/lib/dive/day-clock';
import { printPressure } from '@/lib/quantity/pressure';
import { roundedTo } from '@/lib/quantity/rounding';
import { tellsUnder } from '@/lib/sayings/where';
import type { Compartments } from '@/lib/tissue/coefficients';
import { Choice } from '../../parts/Choice';
import { useOpenWhy } from '../../parts/working/open-why';
import { DeskWhy } from '../why/DeskWhy';
import { ChasePicture } from '../../pictures/chase/ChasePicture';
import { chaseRange, chaseScales } from '../../pictures/chase/chase-scales';
import { leadingCompartment } from '../../pictures/leading';
import { nearest } from '../../pictures/hand/nearest';
import { useDesk } from '../desk-context';
import { COVERED } from './dive-rows';
import { PictureFrame } from './PictureFrame';
import { pressureUnit } from '../../pictures/axes/pressure-axis';
import {
  breathedInertBar,
  isPastSurfaceLimit,
  compartmentStatesAt,
  type CompartmentState,
} from '../../pictures/compartment-states';
import { useOverlay, useShownWays } from './use-overlay';
import { usePicture } from './use-picture';
import styles from '../../pictures/pictures.module.css';

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
  const [chosen, setChosen] = useState<number>();
  const { compartments } = timeline;
  const tells = tellsUnder(useDesk((state) => state.covered));
  const asked = chosen ?? first.number;
  const askAt = (event: MouseEvent<HTMLDivElement>) => {
    const { x, margin } = chaseScales(
      compartments.nitrogenHalfTimeMin,
      chaseRange(scene),
      picture.width,
      picture.height,
    );
    const box = event.currentTarget.getBoundingClientRect();
    const across = ((event.clientX - box.left) * picture.width) / (box.width || 1) - margin.left;
    setChosen(nearest(states, (state) => Math.abs(x(state.halfTimeMin) - across))!.number);
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
      actions={<CompartmentChoice compartments={compartments} chosen={asked} onChoose={setChosen} />}
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
        <ChasePicture {...picture} overlay={overlay} ways={ways} />
      </div>
    </PictureFrame>
  );
}

/** In whole per cent; the hundredth is reached only by what is at its limit, and passed by what is past it. */
function shareOfSurfaceLimit(state: CompartmentState): string {
  const percent = (state.tensionBar / state.limitAtSurfaceBar) * 100;
  return `${roundedTo(percent, 0, isPastSurfaceLimit(state) ? 'up' : 'down')}%`;
}

interface CompartmentChoiceProps {
  compartments: Compartments;
  /** 1–16. */
  chosen: number;
  onChoose: (number: number) => void;
}

/** Stays while the dive changes. */
const CompartmentChoice = memo(function CompartmentChoice({ compartments, chosen, onChoose }: CompartmentChoiceProps) {
  return (
    <Choice
      label="Compartment"
      value={String(chosen)}
      onChange={(number) => onChoose(Number(number))}
      options={Array.from(compartments.nitrogenHalfTimeMin, (minutes, c) => ({
        value: String(c + 1),
        label: `${c + 1}, ${minutes} min`,
      }))}
    />
  );
});
