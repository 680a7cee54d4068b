'use client';

import { useRef, useState } from 'react';
import { setSetups } from '@/lib/dive/edit/edit-setups';
import { readSetup } from '@/lib/dive/script/settings/setup-text';
import { writeSetup } from '@/lib/dive/script/settings/setup-text';
import type { Setup } from '@/lib/dive/setup';
import { Button } from '../../parts/Button';
import { Choice } from '../../parts/Choice';
import { Field } from '../../parts/Field';
import { toFaultOnceMarked } from '../../parts/first-fault';
import { MOST_SETUPS } from '../../pictures/scene';
import { usePreferences } from '../../parts/preferences';
import { useDeskOncePainted, useDeskStore } from '../desk-context';
import styles from './units.module.css';

interface Fault {
  readonly name: string;
  readonly text: string;
}

/** Ways for a unit to be wrong, in the words of the script. All invented. */
const READY_FAULTS: readonly (Fault & { readonly inFeet?: Fault })[] = [
  { name: 'Left in gauge mode', text: 'Gauge unit, gauge mode' },
  { name: 'Set to 32% while air is breathed', text: 'Nitrox unit, gas 32%' },
  { name: 'Set to air while something else is breathed', text: 'Air unit, gas air' },
  {
    name: 'Set to 2000 m of altitude',
    text: 'Mountain unit, altitude 2000 m',
    inFeet: { name: 'Set to 6500 ft of altitude', text: 'Mountain unit, altitude 6500 ft' },
  },
  { name: 'Set to sea level', text: 'Sea-level unit, altitude 0 m' },
  { name: 'Set to fresh water', text: 'Lake unit, water fresh' },
  { name: 'Set more cautious, 40/70', text: 'Cautious unit, gradient factors 40/70' },
  { name: 'Set less cautious, 95/95', text: 'Bold unit, gradient factors 95/95' },
  {
    name: 'Sensor reads 1.5 m shallow',
    text: 'Shallow sensor, depth -1.5 m',
    inFeet: { name: 'Sensor reads 5 ft shallow', text: 'Shallow sensor, depth -5 ft' },
  },
  { name: 'Sensor reads 3% deep', text: 'Deep sensor, depth 103%' },
  { name: 'Swapped before the second dive', text: 'Borrowed unit, fresh before dive 2' },
];

/** Adds and takes away units; they stand in the script's header, so they are kept, undone and shared with it. */
export function SetupEditor() {
  const store = useDeskStore();
  const setups = useDeskOncePainted((state) => state.scene.dive.settings.setups) ?? [];
  const units = usePreferences((state) => state.units);
  const [chosen, setChosen] = useState(0);
  const faults = READY_FAULTS.map((fault) => (units === 'imperial' && fault.inFeet) || fault);
  const [own, setOwn] = useState('');
  const [trouble, setTrouble] = useState<string>();
  const adders = useRef<HTMLDivElement>(null);
  const full = setups.length >= MOST_SETUPS;

  const put = (next: readonly Setup[]) => {
    const { script, change, chooseUnit } = store.getState();
    change({ script: setSetups(script, next) });
    chooseUnit(0);
  };
  const add = (text: string) => {
    if (full) return;
    const read = readSetup(text);
    if (!read.ok) {
      setTrouble(`${read.what} ${read.mend}`);
      return;
    }
    setTrouble(undefined);
    put([...setups, { ...read.value, name: freeName(read.value.name, setups) }]);
    setOwn('');
  };

  return (
    <div className={styles.rules}>
      <div ref={adders} className={styles.adders}>
        <Choice
          label="A unit that is wrong"
          value={String(chosen)}
          onChange={(index) => setChosen(Number(index))}
          options={faults.map(({ name }, index) => ({ value: String(index), label: name }))}
        />
        <Button
          icon="plus"
          aria-label="Add it, the unit that is wrong"
          disabled={full}
          onClick={() => add(faults[chosen]!.text)}
        >
          Add it
        </Button>
        <Field
          label="Or in your own words"
          value={own}
          placeholder={`Rental unit, gas 32%, depth +${units === 'metric' ? '0.8 m' : '2 ft'}`}
          error={trouble}
          onChange={(event) => setOwn(event.target.value)}
          onKeyDown={(event) => event.key === 'Enter' && add(own)}
        />
        <Button
          aria-label="Add the unit in your own words"
          disabled={full}
          onClick={() => {
            add(own);
            toFaultOnceMarked(adders.current);
          }}
        >
          Add
        </Button>
      </div>
      {full && <p>{MOST_SETUPS} units at most stand beside the one set right.</p>}
      {setups.map((setup) => (
        <div key={setup.name} className={styles.adders}>
          <code>{writeSetup(setup)}</code>
          <Button
            kind="quiet"
            aria-label={`Remove ${setup.name}`}
            onClick={() => put(setups.filter((other) => other !== setup))}
          >
            Remove
          </Button>
        </div>
      ))}
    </div>
  );
}

function freeName(name: string, setups: readonly Setup[]): string {
  const taken = new Set(setups.map((setup) => setup.name));
  for (let number = 1; ; number += 1) {
    const candidate = number === 1 ? name : `${name} ${number}`;
    if (!taken.has(candidate)) return candidate;
  }
}
