import { cautions } from '@/content/cautions';
import { usePreferences } from '../../parts/preferences';
import { sayAnswer, sayInFormula } from '../../parts/working/print-quantity';
import { WorkingSheet } from '../../parts/working/WorkingSheet';
import { NotShownNow } from '../../stage/why/NotShownNow';
import { useAskedWorking, type AskedWorking } from '../../stage/why/use-asked-working';
import styles from '../alone.module.css';
import { capital } from '@/lib/quantity/capital';

/**
 * In place of the desk's: the same working in words, with what each step comes to. Its formulas are set, and other numbers
 * tried, on the desk alone: what does that is larger than all of a page of its own.
 */
export function DeskWorking(asked: AskedWorking) {
  const units = usePreferences((state) => state.units);
  const { working, where } = useAskedWorking(asked);
  const { onClose } = asked;
  // How oxygen is worked out is no part of the page: see dive-page.ts.
  if (working === undefined)
    return (
      <WorkingSheet title="Why?" where={where} onClose={onClose}>
        <p>How this reading is worked out is told on the site’s desk; it is not in this page.</p>
      </WorkingSheet>
    );
  if (!working) return <NotShownNow where={where} onClose={onClose} />;
  const { answer, compartment, steps } = working;
  return (
    <WorkingSheet title={`Why? ${working.title}`} where={where} onClose={onClose}>
      <div className={styles.working}>
        <p role="status">
          <b>{sayAnswer(answer, units)}</b>
          {answer.at && ` at ${sayAnswer(answer.at, units)}`}
          {compartment !== undefined && !working.reading.startsWith('tension') && ` (compartment ${compartment})`}.{' '}
          {answer.text}
        </p>
        <ol>
          {steps
            .filter(({ group }) => group === undefined)
            .map((step) => (
              <li key={step.id}>
                <b>{capital(step.title)}</b>: {sayInFormula(step.result, units)}. {step.why}
              </li>
            ))}
        </ol>
        {working.cautions?.map((caution) => (
          <p key={caution}>{caution}</p>
        ))}
        <p>{cautions.unknown}</p>
        <p>{cautions.general}</p>
      </div>
    </WorkingSheet>
  );
}
