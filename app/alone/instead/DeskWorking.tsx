import { cautions } from '@/content/cautions';
import { printClock } from '@/lib/quantity/duration';
import { workingFor } from '@/lib/working/all';
import { isRuleReading, unitWorkingFor, type UnitReadingId } from '@/lib/working/rules/unit-all';
import { usePreferences } from '../../parts/preferences';
import { sayAnswer, sayInFormula } from '../../parts/working/print-quantity';
import { WorkingSheet } from '../../parts/working/WorkingSheet';
import { chosenWatch } from '../../pictures/scene-watches';
import { cursorSample } from '../../stage/desk-store';
import { useDesk } from '../../stage/desk-context';
import styles from '../alone.module.css';

interface DeskWorkingProps {
  reading: UnitReadingId;
  unit?: number | undefined;
  onClose: () => void;
}

/**
 * In place of the desk's: the same working in words, with what each step comes to. Its formulas are set, and other numbers
 * tried, on the desk alone: what does that is larger than all of a page of its own.
 */
export function DeskWorking({ reading, unit, onClose }: DeskWorkingProps) {
  const scene = useDesk((state) => state.scene);
  const sample = useDesk(cursorSample);
  const units = usePreferences((state) => state.units);
  const watch = unit === undefined ? undefined : chosenWatch({ scene, unit });
  const working = watch
    ? unitWorkingFor(reading, { watch, sample })
    : isRuleReading(reading)
      ? null
      : workingFor(reading, scene.timeline, scene.figures, sample);
  const where = `At ${printClock(scene.timeline.timeS[sample]!)} of the dive${watch ? `, by “${watch.setup.name}”` : ''}`;
  if (!working)
    return (
      <WorkingSheet title="Why?" where={where} onClose={onClose}>
        <p>This is not shown at this moment. Move the time cursor to where it is.</p>
      </WorkingSheet>
    );
  const { answer, compartment, steps } = working;
  return (
    <WorkingSheet title={`Why? ${working.title}`} where={where} onClose={onClose}>
      <div className={styles.working}>
        <p>
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
                <b>{step.title.charAt(0).toUpperCase() + step.title.slice(1)}</b>: {sayInFormula(step.result, units)}.{' '}
                {step.why}
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
