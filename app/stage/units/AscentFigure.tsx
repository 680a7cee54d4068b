'use client';

import { useMemo } from 'react';
import { figuresOf } from '@/lib/ascent/figures';
import { printDaySpan } from '@/lib/dive/day-clock';
import { wayUpOf } from '@/lib/dive/way-up';
import { sayDepth } from '@/lib/quantity/depth';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { lostWashout, withClimbsAtMost, type LostWashout } from '@/lib/rules/body/lost-washout';
import { heldBreaths, metreByMetre, mmHgOf, type HeldBreath } from '@/lib/rules/body/lungs';
import { breachesOf, slowedWashout } from '@/lib/rules/body/slowed-washout';
import { printAs } from '@/lib/sayings/measures';
import { Disclosure } from '../../parts/Disclosure';
import { Field } from '../../parts/Field';
import { usePreferences } from '../../parts/preferences';
import { useDesk, useDeskOncePainted } from '../desk-context';
import { PictureFrame } from '../figures/PictureFrame';
import { usePicture } from '../figures/use-picture';
import { sceneOf, type Scene } from '../../pictures/scene';
import { chosenWatch, watchesOf } from '../../pictures/scene-watches';
import { WaysUpPicture, waysUpHeight } from '../../pictures/units/WaysUpPicture';
import { logEntriesOf } from './log-entries';
import shared from '../../pictures/frame.module.css';
import styles from './units.module.css';

/** No climb faster than this is taught, m/min. */
const TAUGHT_M_MIN = 9;

const PENALTIES: ReadonlySet<string | undefined> = new Set(['imposedStop', 'longerSafetyStop', 'tighterLimits']);

/** A fast ascent seen four ways that must not be mixed up: the model's own, the same slower, a rule's, and the lungs. */
export function AscentFigure() {
  const { ref, scene, sample, units, width, cursorS, onCursor } = usePicture(waysUpHeight);
  const { timeline } = scene;
  const watch = useDeskOncePainted(chosenWatch);
  const lost = useMemo(() => lostWashout(scene.dive, TAUGHT_M_MIN), [scene.dive]);
  const slower = useMemo(() => sceneOf(withClimbsAtMost(scene.dive, TAUGHT_M_MIN)), [scene.dive]);
  const breaths = useMemo(() => heldBreaths(timeline), [timeline]);
  const penalties = useMemo(
    () =>
      logEntriesOf(scene, watch, units).flatMap(({ rule, word, timeS }, index) =>
        PENALTIES.has(rule) ? [{ number: index + 1, word, timeS }] : [],
      ),
    [scene, watch, units],
  );
  const { diveNumber } = timeline.legs[timeline.leg[sample]!]!;
  const ways = useMemo(() => {
    const [own, slow] = [wayUpOf(timeline, diveNumber), wayUpOf(slower.timeline, diveNumber)];
    return own && slow && { way: own, slower: { ...slower, way: slow } };
  }, [timeline, slower, diveNumber]);
  const [rail, own] = useMemo(() => {
    const within = (timeS: number) => ways !== undefined && timeS >= ways.way.startS && timeS <= ways.way.endS;
    return [penalties.filter(({ timeS }) => within(timeS)), breaths.filter(({ endS }) => within(endS))];
  }, [ways, penalties, breaths]);
  const worst = own.reduce<HeldBreath | undefined>(
    (most, one) => (most && most.ratio >= one.ratio ? most : one),
    undefined,
  );
  const surfaced = lost.find((one) => one.diveNumber === diveNumber);
  const atSurfacing = ({ supersaturation, ceilingM }: LostWashout['asDived']) =>
    `${printAs('supersaturation', supersaturation.value, units)} at the surface, ${ceilingM > 0 ? `ceiling ${printAs('ceilingM', ceilingM, units)}` : 'no ceiling'}`;
  const unfinished = 'not at the surface yet';
  const said = [
    { name: 'As dived', shows: surfaced ? atSurfacing(surfaced.asDived) : unfinished },
    {
      name: `No faster than ${units === 'metric' ? '9 m/min' : '30 ft/min'}`,
      shows: surfaced ? atSurfacing(surfaced.asTaught) : unfinished,
    },
    {
      name: 'What rules add',
      shows:
        rail.length === 0 ? 'nothing, by the rules that are on' : `${counted(rail.length)}, numbered as in the log`,
    },
    {
      name: 'A breath held on the way',
      shows: worst ? sayRise(worst, units) : 'no rise',
    },
  ];

  return (
    <PictureFrame
      id="ascent"
      title="The way up, four ways"
      sentence={`A held breath would grow to ${(worst?.ratio ?? 1).toFixed(2)} times its volume on the longest rise; ${rail.length === 0 ? 'no rule adds a penalty' : `rules add ${counted(rail.length)}`}. Each of these is a different thing.`}
      columns={[
        { heading: 'The way up', cell: (row: (typeof said)[number]) => row.name },
        { heading: 'Shows', cell: (row) => row.shows },
      ]}
      rows={() => [...said, ...breaths.map((breath) => sayBreath(breath, timeline, units))]}
    >
      <div ref={ref} className={shared.ownHeight}>
        {ways ? (
          <WaysUpPicture
            {...{ scene, units, width, cursorS, onCursor, watch, said }}
            {...ways}
            penalties={rail}
            breaths={own}
          />
        ) : (
          <p>This dive never leaves the surface.</p>
        )}
      </div>
      <Disclosure summary="What sets them apart, and a what-if">
        <div className={styles.layers}>
          <section className={styles.layer}>
            <h3>As dived and slower: the model’s own</h3>
            <p>
              A fast rise leaves less time to lose gas on the way. This is the model alone; no rule has a part in it.
            </p>
          </section>
          <section className={styles.layer}>
            <h3>Penalties: a rule’s</h3>
            <p>What the unit adds is a maker’s choice. Read it in what the unit tells.</p>
          </section>
          <section className={styles.layer}>
            <h3>Lungs: no tissue needed</h3>
            <p>
              By Boyle’s law, were the breath held. The last {units === 'metric' ? 'metres' : 'feet'} are the worst;
              tissue gas has no part in it.
            </p>
          </section>
          <SlowedWashout scene={scene} />
        </div>
      </Disclosure>
    </PictureFrame>
  );
}

const counted = (penalties: number) => `${penalties} ${penalties === 1 ? 'penalty' : 'penalties'}`;

/** How much a held breath grows on a rise: `× 2.40 from 14 m to the surface`. */
const sayRise = ({ ratio, fromM, toM }: HeldBreath, units: UnitSystem) =>
  `× ${ratio.toFixed(2)} from ${sayDepth(fromM, units)} to ${toM > 0 ? sayDepth(toM, units) : 'the surface'}`;

/** What a held breath does on one rise, whole and in its last metre. */
function sayBreath(breath: HeldBreath, timeline: Scene['timeline'], units: UnitSystem) {
  const last = metreByMetre(breath, timeline).at(-1)!;
  return {
    name: `A held breath, ${printDaySpan(timeline, breath.startS, breath.endS)}`,
    shows: `${sayRise(breath, units)}; × ${last.ratio.toFixed(3)} in the last ${sayDepth(last.fromM - last.toM, units)} alone, ${Math.round(mmHgOf(breath.excessBar))} mmHg if nothing could stretch`,
  };
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
          <Times label="Half-times times" value={settings.times} highest={10} onValue={(times) => set({ times })} />
          <Times label="For" unit="min" value={settings.forMin} highest={1440} onValue={(forMin) => set({ forMin })} />
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
  highest: number;
  onValue: (value: number) => void;
}) {
  const { label, unit, value, highest, onValue } = props;
  return (
    <Field
      label={label}
      unit={unit}
      type="number"
      step="any"
      min={1}
      max={highest}
      value={value}
      onChange={(event) => {
        const next = event.target.valueAsNumber;
        if (next >= 1 && next <= highest) onValue(next);
      }}
    />
  );
}
