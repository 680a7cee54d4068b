import { useBring } from './bring-context';
import type { FileBrought, MakeOutcome } from './brought';
import { faultNumbers } from './finding-words';
import { RecordPicture, type MarkedFault } from './pictures/RecordPicture';
import styles from './bring.module.css';

/** The records as they are brought, with what is wrong with them marked where it is. */
export function Records() {
  const brought = useBring((state) => state.brought);
  const chosen = useBring((state) => state.chosen);
  const outcome = useBring((state) => state.outcome);
  if (!brought || !outcome) return null;
  const { made } = outcome;
  const numbers = faultNumbers(brought, chosen);
  return (
    <div className={styles.records}>
      {outcome.dives.map((dive, index) => (
        <RecordPicture
          key={`${index}${dive.name}`}
          dive={dive}
          line={made.ok ? made.lines[index] : undefined}
          made={made.ok ? made : undefined}
          faults={markedFaults(brought, outcome, index, numbers)}
        />
      ))}
    </div>
  );
}

/** What was found in the rows that a mended dive is made of, at the times it has there. */
function markedFaults(
  brought: FileBrought,
  { dives, repaired }: MakeOutcome,
  index: number,
  numbers: ReturnType<typeof faultNumbers>,
): readonly MarkedFault[] {
  const { place, fromRow, laterS } = dives[index]!;
  const next = dives[index + 1];
  const toRow = next?.place === place ? next.fromRow : Infinity;
  return brought.dives[place]!.findings.filter(
    ({ row, at }) => row >= fromRow && row < toRow && Number.isFinite(at.timeS),
  ).map(({ kind, at: { timeS, depthM } }) => ({
    timeS: timeS + laterS,
    depthM,
    number: numbers.get(kind)!,
    mended: repaired[kind] !== undefined,
  }));
}
