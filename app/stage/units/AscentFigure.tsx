'use client';

import { useMemo } from 'react';
import { figuresOf } from '@/lib/ascent/figures';
import { sayDepth, printDepth } from '@/lib/quantity/depth';
import { printClock } from '@/lib/quantity/duration';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { lostWashout } from '@/lib/rules/body/lost-washout';
import { heldBreaths, metreByMetre, mmHgOf } from '@/lib/rules/body/lungs';
import { breachesOf, slowedWashout } from '@/lib/rules/body/slowed-washout';
import { printAs } from '@/lib/sayings/measures';
import { Field } from '../../parts/Field';
import { usePreferences } from '../../parts/preferences';
import { useDesk, useDeskOncePainted } from '../desk-context';
import { PictureFrame } from '../figures/PictureFrame';
import type { Scene } from '../../pictures/scene';
import { watchesOf } from '../../pictures/scene-watches';
import styles from './units.module.css';

/** A fast ascent seen four ways that must not be mixed up: the model's own, a rule's, a what-if, and the lungs. */
export function AscentFigure() {
  const scene = useDeskOncePainted((state) => state.scene);
  const units = usePreferences((state) => state.units);
  const { timeline } = scene;
  const lost = useMemo(() => lostWashout(scene.dive), [scene.dive]);
  const breaths = useMemo(() => heldBreaths(timeline), [timeline]);
  const worst = breaths.reduce((most, breath) => Math.max(most, breath.ratio), 1);
  const penalties = watchesOf(scene)[0]!.toldOnTheWay.filter((event) =>
    ['imposedStop', 'longerSafetyStop', 'tighterLimits'].includes(event.rule),
  ).length;

  return (
    <PictureFrame
      id="ascent"
      title="The way up, four ways"
      sentence={`A held breath would grow to ${worst.toFixed(1)} times its volume on the longest rise; ${penalties === 0 ? 'no rule adds a penalty' : `rules add ${penalties} ${penalties === 1 ? 'penalty' : 'penalties'}`}. Each of these is a different thing.`}
      columns={[
        {
          heading: 'Rise',
          cell: (breath: (typeof breaths)[number]) => `${printClock(breath.startS)} to ${printClock(breath.endS)}`,
        },
        { heading: 'From', numeric: true, cell: (breath) => printDepth(breath.fromM, units) },
        { heading: 'To', numeric: true, cell: (breath) => printDepth(breath.toM, units) },
        { heading: 'Held breath grows', numeric: true, cell: (breath) => `× ${breath.ratio.toFixed(2)}` },
      ]}
      rows={() => breaths}
    >
      <div className={styles.layers}>
        <section className={styles.layer}>
          <h3>Lost washout: the model’s own</h3>
          <p>A fast rise leaves less time to lose gas on the way. This is the model alone; no rule has a part in it.</p>
          {lost.map(({ diveNumber, asDived, asTaught }) => (
            <table key={diveNumber}>
              <caption className={lost.length > 1 ? undefined : 'spoken'}>Dive {diveNumber + 1}, at surfacing</caption>
              <thead>
                <tr>
                  <td />
                  <th scope="col">as dived</th>
                  <th scope="col">at {units === 'metric' ? '9 m/min' : '30 ft/min'}</th>
                </tr>
              </thead>
              <tbody>
                <tr>
                  <th scope="row">Supersaturation</th>
                  <td>{printAs('supersaturation', asDived.supersaturation.value, units)}</td>
                  <td>{printAs('supersaturation', asTaught.supersaturation.value, units)}</td>
                </tr>
                <tr>
                  <th scope="row">Ceiling left</th>
                  <td>{printAs('ceilingM', asDived.ceilingM, units)}</td>
                  <td>{printAs('ceilingM', asTaught.ceilingM, units)}</td>
                </tr>
              </tbody>
            </table>
          ))}
        </section>
        <section className={styles.layer}>
          <h3>Penalties: a rule’s</h3>
          <p>
            What the unit adds is a maker’s choice. On this dive:{' '}
            {penalties === 0
              ? 'nothing, by the rules that are on.'
              : `${penalties} ${penalties === 1 ? 'event' : 'events'}; read them in what the unit tells.`}
          </p>
        </section>
        <SlowedWashout scene={scene} />
        <section className={styles.layer}>
          <h3>Lungs: no tissue needed</h3>
          <p>
            By Boyle’s law, were the breath held. The last {units === 'metric' ? 'metres' : 'feet'} are the worst;
            tissue gas has no part in it.
          </p>
          {breaths.map((breath) => {
            const metres = metreByMetre(breath, timeline);
            const last = metres.at(-1)!;
            return (
              <p key={breath.startS}>
                <b>× {breath.ratio.toFixed(2)}</b> from {sayDepth(breath.fromM, units)} to {sayDepth(breath.toM, units)}
                ; × {last.ratio.toFixed(3)} in the last {sayDepth(last.fromM - last.toM, units)} alone,{' '}
                {Math.round(mmHgOf(breath.excessBar))} mmHg if nothing could stretch.
              </p>
            );
          })}
        </section>
      </div>
    </PictureFrame>
  );
}

/** The what-if of bubbles that hinder washout. It never touches the dive, its readings or its pictures. */
function SlowedWashout({ scene }: { scene: Scene }) {
  const rules = useDesk((state) => state.rules) ?? DEFAULT_RULES;
  const change = useDesk((state) => state.change);
  const units = usePreferences((state) => state.units);
  const { slowedWashout: settings } = rules;
  const breaches = breachesOf(watchesOf(scene)[0]!);
  const set = (next: Partial<typeof settings>) =>
    change({ rules: { ...rules, slowedWashout: { ...settings, ...next } } }, 'slowed washout');
  const imagined = useMemo(
    () =>
      settings.on && breaches.length > 0
        ? figuresOf(slowedWashout(scene.timeline, breaches, settings), scene.dive.settings)
        : undefined,
    [scene, settings, breaches],
  );
  const last = scene.timeline.depthM.findLastIndex((depthM) => depthM > 0);
  const surfaced = Math.min(last + 1, scene.timeline.length - 1);
  return (
    <section className={styles.layer}>
      <h3>Slowed washout: a what-if</h3>
      <p>
        <b>Illustrative.</b> Bubbles may hinder washout; by how much nobody knows. Imagine that losing gas takes longer
        for a while after each breach.
      </p>
      <label className={styles.check}>
        <input type="checkbox" checked={settings.on} onChange={(event) => set({ on: event.target.checked })} />
        Imagine it
      </label>
      {settings.on && (
        <div className={styles.numbers}>
          <Times
            label="Half-times times"
            value={settings.times}
            lowest={1}
            highest={10}
            onValue={(times) => set({ times })}
          />
          <Times
            label="For"
            unit="min"
            value={settings.forMin}
            lowest={1}
            highest={1440}
            onValue={(forMin) => set({ forMin })}
          />
        </div>
      )}
      {settings.on && breaches.length === 0 && <p>No rise breaches the rate limit on this dive, so nothing changes.</p>}
      {imagined && (
        <p>
          At surfacing the ceiling would be {printAs('ceilingM', imagined.ceilingM[surfaced]!, units)}; the model itself
          has {printAs('ceilingM', scene.figures.ceilingM[surfaced]!, units)}.
        </p>
      )}
    </section>
  );
}

function Times(props: {
  label: string;
  unit?: string;
  value: number;
  lowest: number;
  highest: number;
  onValue: (value: number) => void;
}) {
  const { label, unit, value, lowest, highest, onValue } = props;
  return (
    <Field
      label={label}
      unit={unit}
      type="number"
      step="any"
      min={lowest}
      max={highest}
      value={value}
      onChange={(event) => {
        const next = event.target.valueAsNumber;
        if (next >= lowest && next <= highest) onValue(next);
      }}
    />
  );
}
