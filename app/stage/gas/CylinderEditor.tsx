'use client';

import { useState } from 'react';
import { writeGas } from '@/lib/dive/gas-text';
import { readCylinders, writeCylinders } from '@/lib/dive/script/settings/cylinder-text';
import { readPlainNumber } from '@/lib/dive/script/settings/setting-values';
import { BREATHING_RANGE_L_MIN, MOST_CYLINDERS, STRESS_FACTOR_RANGE } from '@/lib/dive/bounds';
import type { Cylinder } from '@/lib/dive/supply';
import { breathingRatesOf, stressFactorOf } from '@/lib/exposure/consumption';
import { gasName, sameGas } from '@/lib/physics/gas';
import { parseBreathingRate, printBreathingRate } from '@/lib/quantity/breathing-rate';
import { atMost, plainNumber } from '@/lib/quantity/number';
import { refused, type Parsed } from '@/lib/quantity/parsed';
import { printCylinderPressure } from '@/lib/quantity/pressure';
import { Button } from '../../parts/Button';
import { Field } from '../../parts/Field';
import { usePreferences } from '../../parts/preferences';
import { TypedValue } from '../../parts/TypedValue';
import { useDeskOncePainted } from '../desk-context';
import { useScriptEdit } from './use-script-edit';
import styles from '../../pictures/gas/exposure.module.css';

const BREATHING = [
  { name: 'consumption', label: 'Breathing at the bottom', phase: 'bottom' },
  { name: 'consumption going down', label: 'Going down', phase: 'descent' },
  { name: 'consumption going up', label: 'Going up', phase: 'ascent' },
  { name: 'consumption at stops', label: 'At stops', phase: 'stops' },
] as const;

/** The cylinders of the script and how fast they are breathed; every change is written into the script. */
export function CylinderEditor() {
  const settings = useDeskOncePainted((state) => state.scene.dive.settings);
  const gases = useDeskOncePainted((state) => state.scene.timeline.gases);
  const units = usePreferences((state) => state.units);
  const { set } = useScriptEdit();
  const cylinders = settings.supply?.cylinders ?? [];
  const rates = breathingRatesOf(settings);
  const write = (next: readonly Cylinder[]) => set('cylinder', next.length > 0 ? writeCylinders(next) : undefined);
  const unheld = gases.find((gas) => !cylinders.some((one) => sameGas(one.gas, gas))) ?? settings.gas;

  return (
    <section className={styles.part} aria-label="Cylinders and breathing">
      {cylinders.map((cylinder, index) => (
        <CylinderRow
          key={cylinder.name}
          cylinder={cylinder}
          others={cylinders.filter((_, other) => other !== index)}
          onChange={(next) => write(cylinders.map((one, other) => (other === index ? next : one)))}
          onRemove={() => write(cylinders.filter((_, other) => other !== index))}
        />
      ))}
      <div className={styles.buttons}>
        <Button
          icon="plus"
          disabled={cylinders.length >= MOST_CYLINDERS}
          onClick={() => write([...cylinders, newCylinder(cylinders, unheld)])}
        >
          Add a cylinder of {gasName(unheld)}
        </Button>
      </div>
      {cylinders.length > 0 && (
        <div className={styles.fields}>
          {BREATHING.map(({ name, label, phase }) => (
            <TypedValue
              key={name}
              label={label}
              shown={printBreathingRate(rates[phase], units)}
              parse={parseRate}
              onValue={(rate) => set(name, `${plainNumber(rate)} L/min`)}
            />
          ))}
          <TypedValue
            label="Stress factor"
            shown={atMost(stressFactorOf(settings), 2)}
            parse={(text) => readPlainNumber(text, ...STRESS_FACTOR_RANGE)}
            onValue={(factor) => set('stress factor', plainNumber(factor))}
          />
        </div>
      )}
    </section>
  );
}

function parseRate(text: string): Parsed<number> {
  const read = parseBreathingRate(text);
  const [least, most] = BREATHING_RANGE_L_MIN;
  return read.ok && (read.value < least || read.value > most)
    ? refused(`“${text.trim()}” is nobody’s breathing.`, `Write ${least} L/min to ${most} L/min.`)
    : read;
}

function newCylinder(cylinders: readonly Cylinder[], gas: Cylinder['gas']): Cylinder {
  const free = ['back', 'stage', 'second stage', 'third stage'].find(
    (name) => !cylinders.some((one) => one.name === name),
  );
  const main = cylinders.length === 0;
  return {
    name: free ?? `cylinder ${cylinders.length + 1}`,
    waterL: main ? 24 : 11,
    workingBar: 232,
    startBar: 200,
    gas: { ...gas },
  };
}

interface CylinderRowProps {
  cylinder: Cylinder;
  others: readonly Cylinder[];
  onChange: (cylinder: Cylinder) => void;
  onRemove: () => void;
}

type Part = 'name' | 'size' | 'start' | 'gas';

/** One cylinder as four boxes; they are read together, since what is right in one may depend on another. */
function CylinderRow({ cylinder, others, onChange, onRemove }: CylinderRowProps) {
  const units = usePreferences((state) => state.units);
  const [typed, setTyped] = useState<Partial<Record<Part, string>>>({});
  /** The box under the hand: what is wrong with the row is said there. */
  const [hand, setHand] = useState<Part>();
  const shown: Record<Part, string> = {
    name: cylinder.name,
    size: `${plainNumber(cylinder.waterL)} L${cylinder.workingBar === cylinder.startBar ? '' : ` at ${printCylinderPressure(cylinder.workingBar, units)}`}`,
    start: printCylinderPressure(cylinder.startBar, units),
    gas: writeGas(cylinder.gas),
  };
  const changed = Object.keys(typed).length > 0;
  const read = changed ? readRow({ ...shown, ...typed }, cylinder, typed, others) : undefined;
  const commit = () => {
    if (!read?.ok) return;
    setTyped({});
    onChange(read.value);
  };
  const box = (part: Part, label: string) => (
    <Field
      label={label}
      value={typed[part] ?? shown[part]}
      autoComplete="off"
      error={read && !read.ok && part === hand ? `${read.what} ${read.mend}` : undefined}
      onChange={(event) => {
        setHand(part);
        setTyped({ ...typed, [part]: event.target.value });
      }}
      onBlur={commit}
      onKeyDown={(event) => {
        if (event.key === 'Enter') commit();
        if (event.key === 'Escape') setTyped({});
      }}
    />
  );
  return (
    <div className={styles.cylinder} role="group" aria-label={`Cylinder ${cylinder.name}`}>
      {box('name', 'Name')}
      {box('size', 'Size')}
      {box('start', 'Filled to')}
      {box('gas', 'Gas')}
      <span className={styles.besideBoxes}>
        <Button icon="minus" aria-label={`Remove ${cylinder.name}`} onClick={onRemove}>
          Remove
        </Button>
      </span>
    </div>
  );
}

/** The row read as a script would read it. Boxes nobody typed in keep their exact values, not what they are rounded to. */
function readRow(
  text: Record<Part, string>,
  before: Cylinder,
  typed: Partial<Record<Part, string>>,
  others: readonly Cylinder[],
): Parsed<Cylinder> {
  const size = typed.size ?? `${plainNumber(before.waterL)} L at ${plainNumber(before.workingBar)} bar`;
  const start = typed.start ?? `${plainNumber(before.startBar)} bar`;
  const read = readCylinders(`${text.name}, ${size}, ${start}, ${text.gas}`);
  if (!read.ok) return read;
  const [one, more] = read.value;
  if (!one || more || !one.gas)
    return refused('These boxes are not one cylinder.', 'Write one cylinder, with no semicolon.');
  if (others.some(({ name }) => name === one.name))
    return refused(`Another cylinder is called “${one.name}”.`, 'Give each a name of its own.');
  return { ok: true, value: { ...one, gas: { ...one.gas } } };
}
