'use client';

import { DEEPEST_HEAD_M, SURFACE_RANGE_BAR } from '@/lib/bench/bench-settings';
import { WATER_WORDS } from '@/lib/bench/bench-words';
import { TOLERANCE_SOURCE } from '@/lib/bench/tolerance-source';
import { readGradientFactors } from '@/lib/dive/script/settings/setting-values';
import { WATERS } from '@/lib/physics/water';
import { atMost, plainNumber } from '@/lib/quantity/number';
import { accepted, refused, type Parsed } from '@/lib/quantity/parsed';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { parsePressure } from '@/lib/quantity/pressure';
import { RATE_PRESETS } from '@/lib/rules/settings/rate-limits';
import { Choice } from '../parts/Choice';
import { usePreferences } from '../parts/preferences';
import { Segmented } from '../parts/Segmented';
import { TypedValue } from '../parts/TypedValue';
import { printFactors } from '@/lib/quantity/percent';
import { useBench } from './bench-context';
import { depthReadText, parseDepthRead, parseStatedLength, parseStatedPercent, parseStatedRate } from './typed-reading';
import styles from './bench.module.css';

/** How the chamber stands, what its user allows, and which limits the units may go by. */
export function ChamberForm() {
  const settings = useBench((state) => state.settings);
  const set = useBench((state) => state.setSettings);
  const units = usePreferences((preferences) => preferences.units);
  const [lengthUnit, lengths] = units === 'metric' ? ['m', 'metres'] : ['ft', 'feet'];
  const length = (stated: number | null) => (stated === null ? '' : depthReadText(stated, units));
  return (
    <section aria-labelledby="chamber" className={`${styles.step} ${styles.unprinted}`}>
      <h2 id="chamber">The chamber</h2>
      <div className={styles.fields}>
        <Segmented
          label="Water in the pot"
          segments={[
            { value: 'fresh', label: 'fresh' },
            { value: 'salt', label: 'salt' },
          ]}
          value={settings.potWater === 'salt' ? 'salt' : 'fresh'}
          onChange={(potWater) => set({ potWater })}
        />
        <Choice
          label="The reference gauge counts"
          value={settings.gaugeScale}
          options={[
            { value: 'pot' as const, label: `${lengths} of the water in the pot` },
            ...WATERS.map((water) => ({ value: water, label: `${lengths} of ${WATER_WORDS[water]}` })),
          ]}
          onChange={(gaugeScale) => set({ gaugeScale })}
        />
        <TypedValue
          label="Surface pressure today"
          shown={`${atMost(settings.surfaceBar * 1000, 2)} hPa`}
          parse={parseSurface}
          onValue={(surfaceBar) => set({ surfaceBar })}
          hint="Of the barometer in the room, not reduced to sea level. bar, hPa, kPa or psi."
        />
        <TypedValue
          label={`Water standing over the units, ${lengthUnit}`}
          shown={depthReadText(settings.headM, units)}
          parse={(text) => parseHead(text, units)}
          onValue={(headM) => set({ headM })}
          hint="Above the level the gauge is connected at: the units feel it, the gauge does not."
        />
      </div>
      <h3>What you allow</h3>
      <p className={styles.soft}>None of this has a value until you state one. {TOLERANCE_SOURCE}</p>
      <div className={styles.fields}>
        <TypedValue
          label={`Depth may be off by, ${lengthUnit}`}
          shown={length(settings.toleranceM)}
          parse={(text) => parseStatedLength(text, units)}
          onValue={(toleranceM) => set({ toleranceM })}
        />
        <TypedValue
          label="and by so much of the depth, %"
          shown={settings.tolerancePercent === null ? '' : plainNumber(settings.tolerancePercent)}
          parse={parseStatedPercent}
          onValue={(tolerancePercent) => set({ tolerancePercent })}
        />
        <TypedValue
          label={`Between in and out it may differ by, ${lengthUnit}`}
          shown={length(settings.hysteresisM)}
          parse={(text) => parseStatedLength(text, units)}
          onValue={(hysteresisM) => set({ hysteresisM })}
        />
        <TypedValue
          label={`In a hold it may drift by, ${lengthUnit}`}
          shown={length(settings.driftM)}
          parse={(text) => parseStatedLength(text, units)}
          onValue={(driftM) => set({ driftM })}
        />
        <TypedValue
          label={`The pressure may change at most at, ${lengthUnit}/min`}
          shown={
            settings.fastestMMin === null
              ? ''
              : units === 'metric'
                ? plainNumber(settings.fastestMMin)
                : atMost(settings.fastestMMin / METRES_PER_FOOT, 1)
          }
          parse={(text) => parseStatedRate(text, units)}
          onValue={(fastestMMin) => set({ fastestMMin })}
          hint="As the chamber’s rating and the units’ makers have it."
        />
      </div>
      <h3>Limits in use</h3>
      <p className={styles.soft}>
        Units differ in their limits, so no-stop times and stops are told as a band from the strictest to the loosest.
      </p>
      <div className={styles.fields}>
        <TypedValue
          label="Strictest gradient factors"
          shown={printFactors(settings.strictest)}
          parse={readGradientFactors}
          onValue={(strictest) => set({ strictest })}
        />
        <TypedValue
          label="Loosest gradient factors"
          shown={printFactors(settings.loosest)}
          parse={readGradientFactors}
          onValue={(loosest) => set({ loosest })}
        />
        <Choice
          label="Rate alarm"
          value={settings.rateLimit}
          options={Object.entries(RATE_PRESETS).map(([value, { title }]) => ({
            value: value as keyof typeof RATE_PRESETS,
            label: title,
          }))}
          onChange={(rateLimit) => set({ rateLimit })}
        />
      </div>
    </section>
  );
}

function parseSurface(text: string): Parsed<number> {
  const read = parsePressure(text);
  if (!read.ok) return read;
  const [lowest, highest] = SURFACE_RANGE_BAR;
  return read.value >= lowest && read.value <= highest
    ? read
    : refused('No place on land has such a pressure.', `Write ${lowest * 1000} to ${highest * 1000} hPa.`);
}

function parseHead(text: string, units: 'metric' | 'imperial'): Parsed<number> {
  const read = parseDepthRead(text, units);
  if (!read.ok) return read;
  const headM = read.value ?? 0;
  return headM >= 0 && headM <= DEEPEST_HEAD_M
    ? accepted(headM)
    : refused('No pot holds that much water over its units.', `Write at most ${DEEPEST_HEAD_M} m.`);
}
