'use client';

import { useState } from 'react';
import type { Doubt } from '@/lib/files/settings/explain-settings';
import { gasName } from '@/lib/physics/gas';
import { printAltitude } from '@/lib/quantity/altitude';
import { atMost } from '@/lib/quantity/number';
import { Button } from '../../parts/Button';
import { Choice } from '../../parts/Choice';
import { DataTable } from '../../parts/DataTable';
import { Disclosure } from '../../parts/Disclosure';
import { usePreferences } from '../../parts/preferences';
import { BesidePicture } from '../pictures/BesidePicture';
import { useBring } from '../bring-context';
import type { Explained } from '../brought';
import { LimitsPicture } from '../pictures/LimitsPicture';
import { printFactors } from '@/lib/quantity/percent';
import styles from '../bring.module.css';

const DOUBTS: readonly (readonly [keyof Doubt, string])[] = [
  ['water', 'the water it is set to'],
  ['altitude', 'the altitude it goes by'],
  ['gas', 'the gas it is set to'],
  ['memory', 'whether it still knew of the dives before'],
];

/** Where the record holds the unit's own figures: beside the model's, and which settings explain them best. */
export function UnitStep() {
  const outcome = useBring((state) => state.outcome);
  const explained = useBring((state) => state.explained);
  const doubt = useBring((state) => state.doubt);
  const setDoubt = useBring((state) => state.setDoubt);
  const explain = useBring((state) => state.explain);
  const busy = useBring((state) => state.busy);
  const [place, setPlace] = useState('0');
  const made = outcome?.made;
  if (!outcome || !made?.ok) return null;
  if (made.beside.length === 0) {
    return (
      <section aria-labelledby="unit" className={styles.step}>
        <h2 id="unit">The unit’s own figures</h2>
        <p>
          The record holds none: no no-stop times, ceilings or stops. So there is nothing to lay beside the model’s.
        </p>
      </section>
    );
  }
  const telling = outcome.dives.flatMap((dive, index) =>
    dive.channels.length > 0 ? [{ value: String(index), label: dive.name }] : [],
  );
  const shown = telling.some(({ value }) => value === place) ? Number(place) : Number(telling[0]!.value);
  return (
    <section aria-labelledby="unit" className={styles.step}>
      <h2 id="unit">The unit’s own figures</h2>
      {made.offBy && (
        <p>
          Under the settings above, the model is off from what the unit showed by {made.offBy} (root mean square, over
          all dives).
        </p>
      )}
      {telling.length > 1 && (
        <Choice label="Which dive to look at" value={String(shown)} options={telling} onChange={setPlace} />
      )}
      <BesidePicture rows={made.beside[shown]!} explained={explained?.beside[shown]} />
      <div className={styles.search}>
        <fieldset className={styles.doubts}>
          <legend>
            Which settings explain the unit best? Its gradient factors are searched; what else is open to doubt?
          </legend>
          {DOUBTS.filter(([name]) => name !== 'memory' || outcome.dives.length > 1).map(([name, words]) => (
            <label key={name}>
              <input
                type="checkbox"
                checked={doubt[name]}
                onChange={(event) => setDoubt({ ...doubt, [name]: event.target.checked })}
              />
              {words}
            </label>
          ))}
        </fieldset>
        <Button disabled={busy !== undefined} onClick={() => void explain()}>
          Search for the settings
        </Button>
      </div>
      {explained && <Found {...explained} />}
    </section>
  );
}

function Found(found: Explained) {
  const settings = useBring((state) => state.settings);
  const decide = useBring((state) => state.decide);
  const units = usePreferences((preferences) => preferences.units);
  const { sets, others, sentences, sawStops, explains } = found;
  const best = sets[0]?.best;
  return (
    <div className={styles.explanation} role="group" aria-label="What the search found">
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {explains && <LimitsPicture sets={sets} others={others} sawStops={sawStops} />}
      {best && (
        <Button
          onClick={() => {
            const { gradientFactors, water, altitudeM, gas } = best.settings;
            void decide({
              settings: { ...settings, gradientFactors, water, altitudeM, start: { kind: 'adapted', altitudeM }, gas },
            });
          }}
        >
          Take what fits best for the dive
        </Button>
      )}
      <Disclosure summary="The settings that explain it, and how well">
        <DataTable
          caption="Settings that explain the unit, those nearest to the record first"
          rows={[...sets, ...others]}
          columns={[
            { heading: 'Low', cell: ({ pairs }) => (sawStops ? rangeOf(pairs.map(({ low }) => low)) : 'unknown') },
            { heading: 'High', cell: ({ pairs }) => rangeOf(pairs.map(({ high }) => high)) },
            {
              heading: 'Fits best',
              cell: ({
                best: {
                  settings: { gradientFactors },
                },
              }) => printFactors(gradientFactors),
            },
            { heading: 'Water', cell: ({ site }) => site.water },
            { heading: 'Altitude', numeric: true, cell: ({ site }) => printAltitude(site.altitudeM, units) },
            { heading: 'Gas', cell: ({ site }) => gasName(site.gas) },
            {
              heading: 'Memory',
              cell: ({ site }) => (site.forgotBefore === 0 ? 'kept' : `lost before dive ${site.forgotBefore + 1}`),
            },
            {
              heading: 'No-stop time off by',
              numeric: true,
              cell: ({ best: { misfit } }) =>
                misfit.noStopMin === undefined ? '–' : `${atMost(misfit.noStopMin, 2)} min`,
            },
            {
              heading: 'Ceiling off by',
              numeric: true,
              cell: ({ best: { misfit } }) => (misfit.ceilingM === undefined ? '–' : `${atMost(misfit.ceilingM, 2)} m`),
            },
            {
              heading: 'Stop depth off by',
              numeric: true,
              cell: ({ best: { misfit } }) =>
                misfit.stopDepthM === undefined ? '–' : `${atMost(misfit.stopDepthM, 2)} m`,
            },
          ]}
        />
      </Disclosure>
    </div>
  );
}

function rangeOf(values: readonly number[]): string {
  if (values.length === 0) return '–';
  const [from, to] = [Math.min(...values), Math.max(...values)];
  return from === to ? String(from) : `${from} to ${to}`;
}
