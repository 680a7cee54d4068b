import { sampleAt } from '../../dive/timeline';
import { workingFor } from '../../working/all';
import { isRuleReading, unitWorkingFor, type UnitReadingId } from '../../working/rules/unit-all';
import type { Working } from '../../working/working';
import type { Subject } from './subject';

/**
 * The working that an `explain` step opens, at a run time in seconds: the model's own or, of a reading that only rules give,
 * that of a unit that is set right. Null where such a unit does not show the reading at that moment.
 */
export function openedWorking(subject: Subject, reading: UnitReadingId, atS: number): Working | null {
  if (isRuleReading(reading)) {
    const watch = subject.truth.watch();
    return unitWorkingFor(reading, { watch, sample: sampleAt(watch.timeline, atS) });
  }
  const { timeline, figures } = subject.truth;
  return workingFor(reading, timeline, figures, sampleAt(timeline, atS));
}
