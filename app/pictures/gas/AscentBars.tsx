import type { Variant } from '@/lib/exposure/variants';
import { roundedTo } from '@/lib/quantity/rounding';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { printAs } from '@/lib/sayings/measures';
import styles from './ascents.module.css';

interface AscentBarsProps {
  variants: readonly Variant[];
  /** By its title. */
  chosen: string;
  onChoose: (title: string) => void;
  units: UnitSystem;
}

/** How long each way up takes, as a bar: what is planned, and what a slip adds to it. Pressing one asks for its path. */
export function AscentBars({ variants, chosen, onChoose, units }: AscentBarsProps) {
  const wholes = variants.map(({ plan }) => plan.schedule.timeToSurfaceMin);
  const [planned] = wholes;
  const longest = Math.max(1, ...wholes.filter(Number.isFinite));
  const share = (minutes: number) => (Math.min(minutes, longest) / longest) * 100;
  return (
    <ol className={styles.bars} aria-label="How long the way up takes">
      {variants.map(({ title, slips }, index) => (
        <li key={title}>
          <button type="button" aria-pressed={title === chosen} onClick={() => onChoose(title)}>
            <span>{title}</span>
            <svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
              <rect width={share(wholes[index]!)} height={10} className={styles.longer} />
              <rect width={share(Math.min(planned!, wholes[index]!))} height={10} className={styles.asPlanned} />
            </svg>
            <span>
              {slips.length === 0
                ? printAs('timeToSurfaceMin', wholes[index]!, units)
                : sayLonger(wholes[index]!, planned!, units)}
            </span>
          </button>
        </li>
      ))}
    </ol>
  );
}

/** `+28 min`: between the two as they are told, so that one and the other add up. */
function sayLonger(wholeMin: number, plannedMin: number, units: UnitSystem): string {
  const [whole, planned] = [wholeMin, plannedMin].map((minutes) => roundedTo(minutes, 0, 'up'));
  const longer = whole! - planned!;
  if (!Number.isFinite(longer)) return printAs('timeToSurfaceMin', wholeMin, units);
  return `${longer < 0 ? '−' : '+'}${printAs('timeToSurfaceMin', Math.abs(longer), units)}`;
}
