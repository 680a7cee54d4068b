'use client';

import type { Check } from '@/lib/evidence/check';
import { sixFigures } from '@/lib/quantity/number';
import { DataTable } from '../parts/DataTable';
import { Disclosure } from '../parts/Disclosure';
import { useEvidence, type Results } from './use-evidence';
import styles from './evidence.module.css';

export interface GroupHead {
  readonly id: string;
  readonly title: string;
  readonly about: string;
}

/** Every check, worked out in this browser while the page is read. */
export function Evidence({ groups }: { groups: readonly GroupHead[] }) {
  const { results, failure } = useEvidence();
  return (
    <div className={styles.evidence}>
      <p className={styles.tally} role="status">
        {failure ?? tally(groups, results)}
      </p>
      {groups.map((group) => (
        <Group key={group.id} group={group} result={results.get(group.id)} />
      ))}
    </div>
  );
}

function tally(groups: readonly GroupHead[], results: Results): string {
  const checks = [...results.values()].flatMap((result) => ('checks' in result ? result.checks : []));
  const holding = checks.filter((check) => check.holds).length;
  const waiting = groups.length - results.size;
  const soFar = `${holding} of ${checks.length} checks hold`;
  return waiting > 0
    ? `${soFar}; ${waiting} more ${waiting === 1 ? 'group' : 'groups'} being worked out in your browser.`
    : `${soFar}.`;
}

function Group({
  group,
  result,
}: {
  group: GroupHead;
  result: Results extends ReadonlyMap<string, infer Result> ? Result | undefined : never;
}) {
  const checks = result && 'checks' in result ? result.checks : [];
  const holding = checks.filter((check) => check.holds).length;
  const state = !result
    ? 'being worked out'
    : 'failure' in result
      ? 'could not be worked out'
      : `${holding} of ${checks.length} hold`;
  return (
    <section className={styles.group} aria-labelledby={`group-${group.id}`}>
      <div className={styles.groupHead}>
        <h2 id={`group-${group.id}`}>{group.title}</h2>
        <span className={result && holding === checks.length && checks.length > 0 ? styles.holds : styles.waits}>
          {state}
        </span>
      </div>
      <p>{group.about}</p>
      {result && 'failure' in result && <p className={styles.failure}>{result.failure}</p>}
      {checks.length > 0 && (
        <Disclosure summary={`Read the ${checks.length} checks`} open={holding < checks.length}>
          <DataTable
            caption={group.title}
            rows={checks}
            columns={[
              { heading: 'Check', cell: (check: Check) => check.title },
              {
                heading: 'Published',
                numeric: true,
                cell: ({ published, unit }) =>
                  `${typeof published === 'number' ? signed(String(Number(published.toPrecision(9)))) : published} ${unit}`,
              },
              {
                heading: 'Ours',
                numeric: true,
                cell: ({ ours, unit }) => (
                  <>
                    <Figure value={ours} /> {unit}
                  </>
                ),
              },
              { heading: 'Difference', numeric: true, cell: ({ difference }) => <Figure value={difference} /> },
              {
                heading: 'Tolerance',
                cell: ({ tolerance, reason }) => (
                  <>
                    <Figure value={tolerance} />: {reason}
                  </>
                ),
              },
              {
                heading: 'Source',
                cell: (check) => `${check.source} (${check.obtained})${check.note ? `. ${check.note}` : ''}`,
              },
              { heading: 'Holds', cell: (check) => (check.holds ? '✓ yes' : '✗ no') },
            ]}
          />
        </Disclosure>
      )}
    </section>
  );
}

/** Six figures that count, with a power of ten only where a plain number would be all zeros. */
function Figure({ value }: { value: number }) {
  const size = Math.abs(value);
  if (size === 0 || size >= 1e-4) return sixFigures(value);
  const [digits, power] = value.toExponential(1).split('e');
  return (
    <>
      {signed(digits!)} × 10<sup>{signed(power!)}</sup>
    </>
  );
}

const signed = (number: string) => number.replace('-', '−');
