import type { Finding } from '@/lib/files/records/check-record';
import { useBring } from './bring-context';
import type { MakeOutcome } from './brought';
import { faultNumbers } from './finding-words';
import { RecordPicture, type MarkedFault } from './RecordPicture';
import styles from './bring.module.css';

/** The records as they are brought, with what is wrong with them marked where it is. */
export function Records() {
  const brought = useBring((state) => state.brought);
  const chosen = useBring((state) => state.chosen);
  const outcome = useBring((state) => state.outcome);
  if (!brought || !outcome) return null;
  const { made } = outcome;
  const numbers = faultNumbers(brought, chosen);
  // A record that is mended into several has other times than those the faults were found at.
  const whole = outcome.dives.length === chosen.length;
  return (
    <div className={styles.records}>
      {outcome.dives.map((dive, index) => (
        <RecordPicture
          key={`${index}${dive.name}`}
          dive={dive}
          line={made.ok ? made.lines[index] : undefined}
          made={made.ok ? made : undefined}
          faults={whole ? markedFaults(brought.dives[chosen[index]!]!.findings, numbers, outcome.repaired) : []}
        />
      ))}
    </div>
  );
}

function markedFaults(
  findings: readonly Finding[],
  numbers: ReturnType<typeof faultNumbers>,
  repaired: MakeOutcome['repaired'],
): readonly MarkedFault[] {
  return findings
    .filter(({ at }) => Number.isFinite(at.timeS))
    .map(({ kind, at }) => ({ ...at, number: numbers.get(kind)!, mended: repaired[kind] !== undefined }));
}
