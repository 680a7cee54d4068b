'use client';

import { MOST_UNITS, type BenchUnit } from '@/lib/bench/bench-settings';
import { parseGas, writeGas } from '@/lib/dive/gas-text';
import { WATERS } from '@/lib/physics/water';
import { accepted, refused, type Parsed } from '@/lib/quantity/parsed';
import type { Gas } from '@/lib/physics/gas';
import { Button } from '../parts/Button';
import { Segmented } from '../parts/Segmented';
import { TypedValue } from '../parts/TypedValue';
import { useBench } from './bench-context';
import styles from './bench.module.css';

/** The units in the pot, each with its own settings. */
export function UnitsForm() {
  const units = useBench((state) => state.units);
  const addUnit = useBench((state) => state.addUnit);
  return (
    <section aria-labelledby="units" className={`${styles.step} ${styles.unprinted}`}>
      <h2 id="units">The units under test</h2>
      <ul className={styles.units}>
        {units.map((unit) => (
          <UnitRow key={unit.id} unit={unit} single={units.length === 1} />
        ))}
      </ul>
      <div className={styles.row}>
        <Button icon="plus" disabled={units.length === MOST_UNITS} onClick={addUnit}>
          Add a unit
        </Button>
      </div>
    </section>
  );
}

function UnitRow({ unit, single }: { unit: BenchUnit; single: boolean }) {
  const setUnit = useBench((state) => state.setUnit);
  const removeUnit = useBench((state) => state.removeUnit);
  return (
    <li>
      <div className={styles.unit} role="group" aria-label={unit.name}>
        <div className={styles.fields}>
          <TypedValue
            label="Name or number"
            shown={unit.name}
            parse={parseName}
            onValue={(name) => setUnit(unit.id, { name })}
          />
          <Segmented
            label="Mode"
            segments={[
              { value: 'dive', label: 'dive' },
              { value: 'gauge', label: 'gauge' },
            ]}
            value={unit.mode}
            onChange={(mode) => setUnit(unit.id, { mode })}
          />
          <Segmented
            label="Its water setting"
            segments={WATERS.map((water) => ({ value: water, label: water }))}
            value={unit.water}
            onChange={(water) => setUnit(unit.id, { water })}
          />
          <TypedValue
            label="Its gas setting"
            shown={unit.gas ? writeGas(unit.gas) : ''}
            parse={parseOwnGas}
            onValue={(gas) => setUnit(unit.id, { gas })}
            hint="Empty: as the run’s."
          />
        </div>
        {!single && (
          <Button kind="quiet" onClick={() => removeUnit(unit.id)}>
            Take {unit.name} out
          </Button>
        )}
      </div>
    </li>
  );
}

function parseName(text: string): Parsed<string> {
  const name = text.trim();
  return name !== '' && name.length <= 60
    ? accepted(name)
    : refused('A unit needs a name.', 'Write one of up to 60 letters, such as its serial number.');
}

function parseOwnGas(text: string): Parsed<Gas | undefined> {
  return text.trim() === '' ? accepted(undefined) : parseGas(text);
}
