'use client';

import { FAULTS_SEEN, type BenchUnit, type Reading } from '@/lib/bench/bench-settings';
import type { OtherFigure } from '@/lib/bench/other-figures';
import { atMost } from '@/lib/quantity/number';
import { Choice } from '../parts/Choice';
import { usePreferences } from '../parts/preferences';
import { TypedValue } from '../parts/TypedValue';
import { useBench } from './bench-context';
import { depthReadText, parseDepthShown, parseHoursRead, parseNoStopRead } from './typed-reading';
import styles from './bench.module.css';

interface ReadingBoxesProps {
  unit: BenchUnit;
  checkpoint: string;
  reading: Reading;
  asked: readonly OtherFigure[];
  atSurface: boolean;
}

/** Room for what one unit showed at one checkpoint: only what the checkpoint asks for. */
export function ReadingBoxes({ unit, checkpoint, reading, asked, atSurface }: ReadingBoxesProps) {
  const setReading = useBench((state) => state.setReading);
  const units = usePreferences((preferences) => preferences.units);
  const lengthUnit = units === 'metric' ? 'm' : 'ft';
  const set = (change: Parameters<typeof setReading>[2]) => setReading(unit.id, checkpoint, change);
  const { depthM, noStopMin, stopM, noFlyH } = reading;
  const nothing = depthM === 'nothing';
  const has = (figure: OtherFigure) => asked.includes(figure);
  return (
    <div className={styles.boxes}>
      <div>
        <TypedValue
          label={`Depth shown, ${lengthUnit}`}
          shown={depthM === undefined || nothing ? '' : depthReadText(depthM, units)}
          parse={(text) => parseDepthShown(text, units)}
          onValue={(value) => set({ depthM: value })}
        />
        {!atSurface && (
          <label className={styles.nothing}>
            <input
              type="checkbox"
              checked={nothing}
              onChange={(event) => set({ depthM: event.target.checked ? 'nothing' : undefined })}
            />
            shows no depth
          </label>
        )}
      </div>
      {has('noStopMin') && (
        <TypedValue
          label="No-stop time, min"
          shown={noStopMin === undefined ? '' : noStopMin === 'over' ? '>99' : String(noStopMin)}
          parse={parseNoStopRead}
          onValue={(value) => set({ noStopMin: value })}
        />
      )}
      {has('stopM') && (
        <TypedValue
          label={`Stop asked for at, ${lengthUnit}`}
          shown={stopM === undefined ? '' : depthReadText(stopM, units)}
          parse={(text) => parseDepthShown(text, units)}
          onValue={(value) => set({ stopM: value })}
        />
      )}
      {has('rateAlarm') && (
        <YesNo label="Rate alarm" value={reading.rateAlarm} onChange={(value) => set({ rateAlarm: value })} />
      )}
      {has('safetyStop') && (
        <YesNo label="Safety stop" value={reading.safetyStop} onChange={(value) => set({ safetyStop: value })} />
      )}
      {has('noFlyH') && (
        <TypedValue
          label="No flying, h"
          shown={noFlyH === undefined ? '' : atMost(noFlyH, 2)}
          parse={parseHoursRead}
          onValue={(value) => set({ noFlyH: value })}
        />
      )}
      <Choice
        label="Fault seen"
        value={reading.fault ?? ''}
        options={[
          { value: '' as const, label: 'none' },
          ...FAULTS_SEEN.map((fault) => ({ value: fault, label: fault })),
        ]}
        onChange={(fault) => set({ fault: fault === '' ? undefined : fault })}
      />
    </div>
  );
}

function YesNo({
  label,
  value,
  onChange,
}: {
  label: string;
  value: boolean | undefined;
  onChange: (value: boolean | undefined) => void;
}) {
  return (
    <Choice
      label={label}
      value={value === undefined ? '' : value ? 'yes' : 'no'}
      options={[
        { value: '', label: 'not read' },
        { value: 'yes', label: 'yes' },
        { value: 'no', label: 'no' },
      ]}
      onChange={(chosen) => onChange(chosen === '' ? undefined : chosen === 'yes')}
    />
  );
}
