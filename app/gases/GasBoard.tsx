'use client';

import { useMemo, useState } from 'react';
import { compareGases } from '@/lib/exposure/gas-comparison';
import { ambientBarAt, partialPressures, type Site } from '@/lib/exposure/gas-depths';
import { gasDensityGL } from '@/lib/exposure/gas-density';
import { atmosphereBar } from '@/lib/physics/atmosphere';
import { AIR, gasName, type Gas } from '@/lib/physics/gas';
import { barPerMetre } from '@/lib/physics/water';
import { sayDepth } from '@/lib/quantity/depth';
import { fixed } from '@/lib/quantity/number';
import { useWidth } from '../parts/use-width';
import { ChartFrame } from '../parts/ChartFrame';
import { DataTable } from '../parts/DataTable';
import { usePreferences } from '../parts/preferences';
import { TypedValue } from '../parts/TypedValue';
import { ColumnPicture } from './ColumnPicture';
import { DensityPicture } from './DensityPicture';
import { parseGasList, printGasList } from './gas-list';
import { GAS_ROWS, sayAgainst, type GasRow } from './gas-words';
import { siteSettings, useSite } from './site-store';
import { deepestShownM } from './water-column';
import styles from './gases.module.css';
import { TypedDepth } from '../parts/TypedDepth';

const FIRST_GASES: readonly Gas[] = [AIR, { o2: 0.32, he: 0 }, { o2: 0.21, he: 0.35 }, { o2: 0.18, he: 0.45 }];
const HEIGHT = 360;

/** Gases beside each other at one depth: what each presses, weighs, buys and costs. */
export function GasBoard() {
  const units = usePreferences((state) => state.units);
  const site = useSite();
  const [gases, setGases] = useState(FIRST_GASES);
  const [depthM, setDepthM] = useState(40);
  const place: Site = { surfaceBar: atmosphereBar(site.altitudeM), barPerMetre: barPerMetre(site.water) };
  const compared = useMemo(() => compareGases(gases, depthM, siteSettings(site), site.narcotic), [gases, depthM, site]);
  const depths = Array.from({ length: 6 }, (_, i) => (deepestShownM(depthM) * i) / 5);
  const base = compared[0]!;

  return (
    <div className={styles.board}>
      <div className={styles.controls}>
        <TypedValue
          label="Gases side by side"
          shown={printGasList(gases)}
          parse={parseGasList}
          live
          onValue={setGases}
          hint="Such as air, 32%, 18/45 (oxygen/helium)"
        />
        <TypedDepth label="At a depth of" depthM={depthM} onDepth={setDepthM} />
      </div>
      <div className={styles.pair}>
        <ChartFrame
          headingLevel={3}
          title="Partial pressures down the column"
          sentence="The width at each depth is the pressure there; a gas’s share of it is its partial pressure. The figure at the head is oxygen, in bar, at the depth asked about. A dashed line marks where it reaches 1.4 bar, a solid one 1.6 bar; hatching, where it is under the floor of 0.16 bar that is customary."
          columns={[
            { heading: 'Depth', cell: (depth: number) => sayDepth(depth, units) },
            ...gases.map((gas) => ({
              heading: `${gasName(gas)}, bar`,
              cell: (depth: number) => sayPressures(gas, depth, place),
            })),
          ]}
          rows={depths}
          source="Dalton’s law; the limits are common practice"
        >
          <Measured>
            {(width) => <ColumnPicture gases={gases} depthM={depthM} site={place} width={width} height={HEIGHT} />}
          </Measured>
          <p className={styles.legend}>
            <span className={styles.oxygenKey} /> oxygen <span className={styles.nitrogenKey} /> nitrogen{' '}
            <span className={styles.heliumKey} /> helium
          </p>
        </ChartFrame>
        <ChartFrame
          headingLevel={3}
          title="Density down the column"
          sentence="Dense gas is hard to move, and carbon dioxide stays behind. Up to 5.2 g/L is recommended; 6.2 g/L is the most that is ever advised. Told at 0 °C, as those marks are."
          columns={[
            { heading: 'Depth', cell: (depth: number) => sayDepth(depth, units) },
            ...gases.map((gas) => ({
              heading: `${gasName(gas)}, g/L`,
              numeric: true,
              cell: (depth: number) => fixed(gasDensityGL(gas, ambientBarAt(depth, place)), 1),
            })),
          ]}
          rows={depths}
          source="Anthony and Mitchell 2016, figures from memory"
        >
          <Measured>
            {(width) => <DensityPicture gases={gases} depthM={depthM} site={place} width={width} height={HEIGHT} />}
          </Measured>
        </ChartFrame>
      </div>
      <div className={styles.whole}>
        <DataTable
          caption={`Gases at ${sayDepth(depthM, units)}`}
          captionShown
          columns={[
            { heading: 'At this depth', cell: (row: GasRow) => row.label },
            ...compared.map((one) => ({ heading: gasName(one.gas), cell: (row: GasRow) => row.say(one, units) })),
          ]}
          rows={GAS_ROWS}
        />
      </div>
      {compared.length > 1 && (
        <ul className={styles.sentences} aria-label="What each gas buys and costs">
          {compared.slice(1).map((one) => (
            <li key={gasName(one.gas)}>{sayAgainst(one, base, units)}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Measured({ children }: { children: (width: number) => React.ReactNode }) {
  const { ref, width } = useWidth<HTMLDivElement>(480);
  return <div ref={ref}>{children(width)}</div>;
}

function sayPressures(gas: Gas, depthM: number, site: Site): string {
  const { oxygenBar, nitrogenBar, heliumBar } = partialPressures(gas, ambientBarAt(depthM, site));
  return `O₂ ${fixed(oxygenBar, 2)} · N₂ ${fixed(nitrogenBar, 2)}${gas.he > 0 ? ` · He ${fixed(heliumBar, 2)}` : ''}`;
}
