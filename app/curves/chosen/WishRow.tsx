'use client';

import { parseGas, writeGas } from '@/lib/dive/gas-text';
import { readGradientFactors, readSiteAltitude } from '@/lib/dive/script/settings/setting-values';
import { printAltitude } from '@/lib/quantity/altitude';
import { printFactors } from '@/lib/quantity/percent';
import { Choice } from '../../parts/Choice';
import { Disclosure } from '../../parts/Disclosure';
import { IconButton } from '../../parts/IconButton';
import { usePreferences } from '../../parts/preferences';
import { TypedValue } from '../../parts/TypedValue';
import { parseBefore, writeBefore } from './before-text';
import { sayWish, type CurveWish } from './curve-wish';
import { CurveSample } from '../plot/CurveKey';
import styles from '../curves.module.css';

const ARRIVALS = [
  { value: 'settled', label: 'lives there' },
  { value: 'just arrived', label: 'just up from the sea' },
] as const;

interface WishRowProps {
  wish: CurveWish;
  place: number;
  /** Its fields are shown at first. */
  open: boolean;
  onChange: (wish: CurveWish) => void;
  /** Absent for the last one left. */
  onRemove: (() => void) | undefined;
}

/** What one of the curves stands for. */
export function WishRow({ wish, place, open, onChange, onRemove }: WishRowProps) {
  const units = usePreferences((state) => state.units);
  const set = (change: Partial<CurveWish>) => onChange({ ...wish, ...change });
  const { low, high } = wish.gradientFactors;
  return (
    <div className={styles.wish} role="group" aria-label={`Curve ${place + 1}`}>
      <Disclosure
        open={open}
        summary={
          <>
            <CurveSample look={place} />
            {sayWish(wish, units)}
          </>
        }
      >
        <div className={styles.wishFields}>
          <TypedValue label="Gas" shown={writeGas(wish.gas)} parse={parseGas} live onValue={(gas) => set({ gas })} />
          <TypedValue
            label="Gradient factors"
            shown={printFactors({ low, high })}
            parse={readGradientFactors}
            live
            onValue={(gradientFactors) => set({ gradientFactors })}
          />
          <TypedValue
            label="Altitude"
            shown={printAltitude(wish.altitudeM, units)}
            parse={readSiteAltitude}
            live
            onValue={(altitudeM) => set({ altitudeM })}
          />
          <Choice
            label="The diver"
            value={wish.arrival}
            options={ARRIVALS}
            disabled={wish.altitudeM === 0}
            onChange={(arrival) => set({ arrival })}
          />
          <TypedValue
            label="Dive before"
            shown={writeBefore(wish.before, units)}
            parse={parseBefore}
            onValue={(before) => set({ before })}
          />
        </div>
      </Disclosure>
      {onRemove && <IconButton icon="close" label={`Remove curve ${place + 1}`} onClick={onRemove} />}
    </div>
  );
}
