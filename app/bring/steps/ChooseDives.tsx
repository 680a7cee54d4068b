'use client';

import type { Series } from '@/lib/files/records/dive-log';
import { FROM_REST_S } from '@/lib/files/records/surface-intervals';
import { gasName } from '@/lib/physics/gas';
import { sayDepth } from '@/lib/quantity/depth';
import { printHours } from '@/lib/quantity/duration';
import { Button } from '../../parts/Button';
import { usePreferences } from '../../parts/preferences';
import { useBring } from '../bring-context';
import type { DiveRead } from '../brought';
import { sayFound } from '../finding-words';
import styles from '../bring.module.css';

/** The dives of the file as a list, in series whose tissues carry over: one dive or a series is chosen from it. */
export function ChooseDives() {
  const dives = useBring((state) => state.brought!.dives);
  const series = useBring((state) => state.brought!.series);
  const chosen = useBring((state) => state.chosen);
  const decide = useBring((state) => state.decide);
  const units = usePreferences((preferences) => preferences.units);
  const gases = ({ gases: own }: DiveRead) => (own.length === 0 ? 'not told' : own.map(gasName).join(', then '));
  if (dives.length === 1) {
    const [only] = dives;
    return (
      <p>
        {`${only!.samples.toLocaleString('en-GB')} samples over ${printHours(only!.endS)}, ${sayDepth(only!.deepestM, units)} at the deepest.`}
        {only!.startedAt !== undefined && ` It began ${sayMoment(only!.startedAt)}.`}
        {` Gas: ${gases(only!)}.`}
      </p>
    );
  }
  const whole = new Set(series.filter((one) => sameChoice(one.dives, chosen)));
  const choose = (places: readonly number[]) => void decide({ chosen: places });
  return (
    <div className={styles.log}>
      <p>
        {series.length === 1
          ? 'What the tissues hold is carried from each to the next.'
          : `Choose one dive, or a series: what the tissues hold is carried from each dive of it to the next. A new series begins after ${printHours(FROM_REST_S)} at the surface, when less than 1% of what the slowest compartment took up is left, or where the file does not tell the time between.`}
      </p>
      <div className={styles.logRows} tabIndex={0} role="region" aria-label="Dives of the file">
        <table>
          <thead>
            <tr>
              <th scope="col">Dive</th>
              <th scope="col">Began</th>
              <th scope="col">Deepest</th>
              <th scope="col">Length</th>
              <th scope="col">Gas</th>
              <th scope="col">Found</th>
            </tr>
          </thead>
          {series.map((one, number) => (
            <tbody key={one.dives[0]}>
              {series.length > 1 && (
                <tr className={styles.seriesRow}>
                  <th scope="rowgroup" colSpan={6}>
                    <span>{sayBeginning(one, number, dives)}</span>
                    <Button disabled={whole.has(one)} onClick={() => choose(one.dives)}>
                      {one.dives.length === 1 ? 'Take this dive' : `Take these ${one.dives.length}`}
                    </Button>
                  </th>
                </tr>
              )}
              {one.dives.map((place) => {
                const dive = dives[place]!;
                return (
                  <tr key={place}>
                    <th scope="row">
                      <label>
                        <input
                          type="checkbox"
                          checked={chosen.includes(place)}
                          onChange={({ target: { checked } }) =>
                            choose(
                              dives
                                .map((_, other) => other)
                                .filter((other) => (other === place ? checked : chosen.includes(other))),
                            )
                          }
                        />
                        {dive.name}
                      </label>
                    </th>
                    <td>{dive.startedAt === undefined ? 'not told' : sayMoment(dive.startedAt)}</td>
                    <td>{sayDepth(dive.deepestM, units)}</td>
                    <td>{printHours(dive.endS)}</td>
                    <td>{gases(dive)}</td>
                    <td>{sayFound(dive.counts)}</td>
                  </tr>
                );
              })}
            </tbody>
          ))}
        </table>
      </div>
      {chosen.length === 0 && <p>Nothing is chosen yet.</p>}
    </div>
  );
}

function sameChoice(one: readonly number[], other: readonly number[]): boolean {
  return one.length === other.length && one.every((place, i) => place === other[i]);
}

function sayBeginning({ dives: places, begins }: Series, number: number, dives: readonly DiveRead[]): string {
  const from = dives[places[0]!]!.startedAt;
  const count = places.length === 1 ? 'one dive' : `${places.length} dives`;
  const why = { first: '', rest: ', from rest', untold: ', the time before it not told' }[begins];
  return `Series ${number + 1}: ${count}${from === undefined ? '' : `, ${sayMoment(from)}`}${why}`;
}

/** A date and time as the file writes them, without what a reader can do without. */
function sayMoment(text: string): string {
  return text
    .replace('T', ' ')
    .replace(/(:\d{2}):\d{2}(\.\d+)?/, '$1')
    .slice(0, 40);
}
