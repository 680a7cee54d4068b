'use client';

import { useId, useMemo, useState } from 'react';
import { overstayed } from '@/content/scenarios/overstayed';
import { figuresAt } from '@/lib/ascent/figures';
import { sampleAt } from '@/lib/dive/timeline';
import { sayDepth } from '@/lib/quantity/depth';
import { printClock } from '@/lib/quantity/duration';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { modelSayings, standingOf, type ModelMoment } from '@/lib/sayings/model-readings';
import { sayStanding } from '@/lib/sayings/stop-state';
import { ButtonLink } from '../parts/Button';
import { ChartFrame } from '../parts/ChartFrame';
import { playPath } from '../parts/ready-dives';
import { usePreferences } from '../parts/preferences';
import { useWidth } from '../parts/use-width';
import { stage, type Scene } from '../pictures/scene';
import { promiseMoments, type PromiseMoment } from './promise-moments';
import { PromisePlate } from './PromisePlate';
import styles from './PromisePlate.module.css';

const STEP_S = 10;
const TOLD = [
  ['Depth', 'depth'],
  ['No-stop time', 'no-stop'],
  ['Ceiling', 'ceiling'],
  ['Required stop', 'required-stop'],
] as const;

/** What the whole sandbox is for, in one plate: a dive stayed too long, and where the stop it owes comes from. */
export function PromiseFigure() {
  const units = usePreferences((preferences) => preferences.units);
  const scene = useMemo(() => promised(units), [units]);
  const moments = useMemo(() => promiseMoments(scene, overstayed.stillS), [scene]);
  const { ref, width, measured } = useWidth<HTMLDivElement>(0);
  const [cursorS, setCursorS] = useState<number>();
  const hand = useId();
  const atS = cursorS ?? moments[2]!.timeS;
  const endS = scene.timeline.timeS.at(-1)!;
  const plate = { scene, moments, units, cursorS };
  const deepest = sayDepth(Math.max(...scene.timeline.legs.map(({ toM }) => toM)), units);
  return (
    <ChartFrame
      title={overstayed.title}
      sentence={`${deepest} on air, past the no-stop time. Sixteen compartments chase the gas breathed; where one passes its limit, a ceiling hangs over the diver.`}
      columns={[
        { heading: 'Time', cell: ({ timeS }) => printClock(timeS) },
        { heading: 'What happens', cell: ({ words }) => words },
        ...TOLD.map(([heading, id]) => ({
          heading,
          numeric: true,
          cell: ({ timeS }: PromiseMoment) => modelSayings(momentAt(scene, timeS), units)[id].text,
        })),
      ]}
      rows={moments}
    >
      <div className={styles.plate}>
        <div ref={ref}>
          {measured ? (
            <PromisePlate {...plate} width={width} />
          ) : (
            // As the page comes, for no window in particular: its shape is the one it will have.
            <>
              <div className={styles.wide}>
                <PromisePlate {...plate} width={560} />
              </div>
              <div className={styles.narrow}>
                <PromisePlate {...plate} width={310} />
              </div>
            </>
          )}
        </div>
        <div className={`${styles.hand} unprinted`}>
          <label htmlFor={hand}>Time</label>
          <input
            id={hand}
            type="range"
            min={0}
            max={endS}
            step={STEP_S}
            value={Math.round(atS / STEP_S) * STEP_S}
            aria-valuetext={sentenceAt(scene, atS, units)}
            onChange={(event) => setCursorS(Number(event.target.value))}
          />
        </div>
        <div className={styles.row}>
          {/* The slider says it already. */}
          <p className={styles.said} aria-hidden="true">
            {sentenceAt(scene, atS, units)}
          </p>
          <ButtonLink href={playPath(overstayed.id)} kind="primary" icon="play">
            Play this dive
          </ButtonLink>
        </div>
      </div>
    </ChartFrame>
  );
}

function promised(units: UnitSystem): Scene {
  const staged = stage(units === 'metric' ? overstayed.script : overstayed.inFeet.script);
  if (!staged.ok) throw new Error('The dive of the front page does not parse.');
  return staged.scene;
}

function momentAt({ timeline, figures }: Scene, timeS: number): ModelMoment {
  const sample = sampleAt(timeline, timeS);
  return { timeline, sample, now: figuresAt(timeline, figures, sample) };
}

/** How the diver stands at a moment: `At 13:06, 30.0 m. There is a ceiling …`. */
function sentenceAt(scene: Scene, timeS: number, units: UnitSystem): string {
  const moment = momentAt(scene, timeS);
  return `At ${printClock(timeS)}, ${modelSayings(moment, units).depth.text}. ${sayStanding(standingOf(moment), units)}`;
}
