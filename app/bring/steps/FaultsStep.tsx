'use client';

import type { Finding, FindingKind } from '@/lib/files/records/check-record';
import { DataTable } from '../../parts/DataTable';
import { Disclosure } from '../../parts/Disclosure';
import { useBring } from '../bring-context';
import { FaultMark } from '../pictures/FaultMark';
import { faultNumbers, KIND_WORDS } from '../finding-words';
import { mendable } from '../bring-store';
import styles from '../bring.module.css';

/** What is wrong with the records, with row numbers. Nothing is mended unless it is ticked. */
export function FaultsStep() {
  const brought = useBring((state) => state.brought);
  const chosen = useBring((state) => state.chosen);
  const repair = useBring((state) => state.repair);
  const decide = useBring((state) => state.decide);
  const repaired = useBring((state) => state.outcome?.repaired);
  if (!brought) return null;
  const findings = chosen.flatMap((place) =>
    brought.dives[place]!.findings.map((finding) => ({ dive: brought.dives[place]!.name, finding })),
  );
  const numbers = faultNumbers(brought, chosen);
  const offers = mendable(brought, chosen);
  const others = findings.filter(({ finding }) => finding.repair === undefined);
  const toggle = (kind: FindingKind, on: boolean) =>
    void decide({ repair: on ? [...repair, kind] : repair.filter((other) => other !== kind) });
  return (
    <section aria-labelledby="faults" className={styles.step}>
      <h2 id="faults">What is wrong with it</h2>
      {brought.brokeOff && (
        <p className={styles.trouble} role="alert">
          <strong>The rest of the file could not be read: {brought.brokeOff.what}</strong> {brought.brokeOff.mend} What
          came before is below.
        </p>
      )}
      {findings.length === 0 && <p>Nothing was found: times rise, and no depth is out of the way.</p>}
      {offers.length > 0 && (
        <fieldset className={styles.offers}>
          <legend>Mend what you agree to. The file itself stays as it is.</legend>
          {offers.map(({ kind, count, repair: would, blocking }) => {
            const own = findings.filter(({ finding }) => finding.kind === kind);
            return (
              <label key={kind} className={styles.offer}>
                <input
                  type="checkbox"
                  checked={repair.includes(kind)}
                  onChange={(event) => toggle(kind, event.target.checked)}
                />
                <span>
                  <strong>
                    <Marked number={numbers.get(kind)!} mended={repaired?.[kind] !== undefined} />
                    {KIND_WORDS[kind]}: {count}
                    {repaired?.[kind] !== undefined && ', mended'}
                  </strong>
                  {blocking && repaired?.[kind] === undefined && (
                    <em className={styles.must}>no dive can be made before this is mended</em>
                  )}
                  <span>{own[0]!.finding.what}</span>
                  {own.length > 1 && (
                    <span className={styles.soft}>Also at {placesOf(own.slice(1).map(({ finding }) => finding))}.</span>
                  )}
                  <span>
                    <b>If ticked:</b> {would}
                    {repaired?.[kind] !== undefined && ` Done: ${repaired[kind]}.`}
                  </span>
                </span>
              </label>
            );
          })}
        </fieldset>
      )}
      {others.length > 0 && (
        <ul className={styles.plain}>
          {others.slice(0, 5).map(({ finding }) => (
            <li key={`${finding.kind}${finding.row}`}>
              <Marked number={numbers.get(finding.kind)!} mended={false} />
              {finding.what}
            </li>
          ))}
        </ul>
      )}
      {findings.length > 0 && (
        <Disclosure summary={`Every finding, by row (${findings.length})`}>
          <DataTable
            caption="Findings"
            rows={findings}
            columns={[
              {
                heading: 'Row',
                cell: ({ finding }) =>
                  finding.row === finding.lastRow ? finding.row : `${finding.row} to ${finding.lastRow}`,
              },
              { heading: 'Dive', cell: ({ dive }) => dive },
              { heading: 'What', cell: ({ finding }) => finding.what },
              { heading: 'Repair', cell: ({ finding }) => finding.repair ?? 'taken as it is' },
            ]}
          />
        </Disclosure>
      )}
    </section>
  );
}

/** The mark and the number it has on the record. */
function Marked({ number, mended }: { number: number; mended: boolean }) {
  return (
    <span className={styles.marked} aria-hidden="true">
      <svg viewBox="-7 -7 14 14">
        <FaultMark mended={mended} />
      </svg>
      {number}
    </span>
  );
}

const PLACES_SAID = 12;

function placesOf(findings: readonly Finding[]): string {
  const places = findings
    .slice(0, PLACES_SAID)
    .map(({ row, lastRow }) => (row === lastRow ? String(row) : `${row} to ${lastRow}`));
  const more = findings.length - places.length;
  return `${places.join(', ')}${more > 0 ? ` and ${more} more places` : ''}`;
}
