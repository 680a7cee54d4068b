'use client';

import { defaultSettings } from '@/lib/dive/default-settings';
import { parseGas, writeGas } from '@/lib/dive/gas-text';
import { readGradientFactors, readSiteAltitude } from '@/lib/dive/script/settings/setting-values';
import { AIR } from '@/lib/physics/gas';
import { WATERS } from '@/lib/physics/water';
import { printAltitude } from '@/lib/quantity/altitude';
import { writeTime } from '@/lib/quantity/duration';
import { parseTime } from '@/lib/quantity/time';
import { usePreferences } from '../../parts/preferences';
import { Segmented } from '../../parts/Segmented';
import { TypedValue } from '../../parts/TypedValue';
import { printFactors } from '@/lib/quantity/percent';
import { useBring } from '../bring-context';
import { ChooseDives } from './ChooseDives';
import styles from '../bring.module.css';

/** The dives of the file: which to bring, the time between them, where and how they were dived, and what became of them. */
export function DivesStep() {
  const brought = useBring((state) => state.brought);
  const made = useBring((state) => state.outcome?.made);
  if (!brought) return null;
  return (
    <section aria-labelledby="dives" className={styles.step}>
      <h2 id="dives">{brought.dives.length === 1 ? 'The dive' : `The ${brought.dives.length} dives`}</h2>
      <ChooseDives />
      <Intervals />
      <Site />
      {made && !made.ok && (
        <p className={styles.trouble} role="alert">
          <strong>{made.what}</strong> {made.mend}
        </p>
      )}
      <Notes notes={[...brought.notes, ...(made?.ok ? made.notes : [])]} />
    </section>
  );
}

function Notes({ notes }: { notes: readonly string[] }) {
  // One that goes on where another ends says both.
  const distinct = [...new Set(notes)].filter(
    (note) => !notes.some((other) => other !== note && other.startsWith(note.replace(/\.$/, ''))),
  );
  if (distinct.length === 0) return null;
  return (
    <ul className={styles.plain}>
      {distinct.map((note) => (
        <li key={note}>{note}</li>
      ))}
    </ul>
  );
}

function Intervals() {
  const dives = useBring((state) => state.outcome?.dives);
  const intervalsS = useBring((state) => state.intervalsS);
  const decide = useBring((state) => state.decide);
  if (!dives || dives.length < 2) return null;
  return (
    <div className={styles.fields}>
      {dives.slice(1).map((dive, before) => (
        <TypedValue
          key={before}
          label={`Surface interval before “${dive.name}”`}
          shown={dive.intervalS === undefined ? '' : writeTime(Math.round(dive.intervalS))}
          parse={parseTime}
          onValue={(timeS) =>
            void decide({ intervalsS: dives.map((_, index) => (index === before + 1 ? timeS : intervalsS[index])) })
          }
          hint={
            dive.intervalS === undefined
              ? 'The file does not tell it. Write a time such as 1 h 30 min.'
              : 'As the file tells it, unless you write another.'
          }
        />
      ))}
    </div>
  );
}

function Site() {
  const told = useBring((state) => state.brought!.told);
  const settings = useBring((state) => state.settings);
  const decide = useBring((state) => state.decide);
  const units = usePreferences((preferences) => preferences.units);
  const untold = useUntoldGas();
  const change = (more: typeof settings) => void decide({ settings: { ...settings, ...more } });
  return (
    <div className={styles.fields}>
      <Segmented
        label={told.water === undefined ? 'Water (the file does not tell)' : 'Water'}
        segments={WATERS.map((water) => ({ value: water, label: water }))}
        value={settings.water ?? told.water ?? 'reference'}
        onChange={(water) => change({ water })}
      />
      <TypedValue
        label="Altitude"
        shown={printAltitude(settings.altitudeM ?? told.altitudeM ?? 0, units)}
        parse={readSiteAltitude}
        onValue={(altitudeM) => change({ altitudeM, start: { kind: 'adapted', altitudeM } })}
        hint={told.altitudeM === undefined ? 'The file does not tell it.' : 'As the file tells it.'}
      />
      {untold && (
        <TypedValue
          label="Gas"
          shown={settings.gas ? writeGas(settings.gas) : untold.open ? '' : writeGas(AIR)}
          parse={parseGas}
          onValue={(gas) => change({ gas })}
          hint={untold.why}
        />
      )}
      <TypedValue
        label="Gradient factors of the model"
        shown={printFactors(settings.gradientFactors ?? defaultSettings().gradientFactors)}
        parse={readGradientFactors}
        onValue={(gradientFactors) => change({ gradientFactors })}
      />
    </div>
  );
}

/** Why the gas has to be said, if it has: the file tells none, or leaves it open between several. */
function useUntoldGas(): { readonly why: string; readonly open: boolean } | undefined {
  const dives = useBring((state) => state.brought!.dives);
  const chosen = useBring((state) => state.chosen);
  const brought = chosen.map((place) => dives[place]!);
  const open = brought.find(({ firstGas }) => (firstGas?.possible.length ?? 0) > 1);
  if (open) return { why: open.firstGas!.from, open: true };
  return brought.some(({ gases }) => gases.length === 0)
    ? { why: 'The file does not tell it: air, unless you write another.', open: false }
    : undefined;
}
