'use client';

import { ABOUT_WORDS, type SheetAbout } from '@/lib/bench/bench-settings';
import { printDeviation, printExactDepth, sayExpected, saySettings, WATER_WORDS } from '@/lib/bench/bench-words';
import type { ChamberRun } from '@/lib/bench/chamber-run';
import { depthDeviations, type DepthDeviation } from '@/lib/bench/deviations';
import { TOLERANCE_SOURCE } from '@/lib/bench/tolerance-source';
import { verdictOf } from '@/lib/bench/verdict';
import type { UnitSheet } from '@/lib/bench/write-sheet-csv';
import { gasName } from '@/lib/physics/gas';
import { printClock } from '@/lib/quantity/duration';
import { printDepth } from '@/lib/quantity/depth';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { usePreferences } from '../parts/preferences';
import { useBench } from './bench-context';
import { depthReadText } from './typed-reading';
import styles from './printed-sheet.module.css';

/** So many units stand side by side across a page. */
const ABREAST = 4;

/** The sheet on paper: what was entered, and lines to write on where nothing was. Never seen on the screen. */
export function PrintedSheet({ run, sheets }: { run: ChamberRun; sheets: readonly UnitSheet[] }) {
  const settings = useBench((state) => state.settings);
  const about = useBench((state) => state.about);
  const units = usePreferences((preferences) => preferences.units);
  const rows = Array.from({ length: Math.ceil(sheets.length / ABREAST) }, (_, i) =>
    sheets.slice(i * ABREAST, (i + 1) * ABREAST),
  );
  const lines = (Object.keys(ABOUT_WORDS) as (keyof SheetAbout)[]).filter((name) => name !== 'remarks');
  return (
    <div className={styles.sheet}>
      <ul className={styles.about}>
        {lines.map((name) => (
          <li key={name}>
            {ABOUT_WORDS[name]}: <Written text={about[name]} />
          </li>
        ))}
      </ul>
      <p>{saySettings(settings, units)}</p>
      {rows.map((abreast) => (
        <Readings key={abreast[0]!.unit.id} run={run} sheets={abreast} />
      ))}
      {sheets.map((sheet) => (
        <Outcome key={sheet.unit.id} {...sheet} />
      ))}
      <p>
        {ABOUT_WORDS.remarks}: <Written text={about.remarks} />
      </p>
      {about.remarks === '' && <p className={styles.line} />}
      <p className={styles.signed}>
        Signed: <Written text="" />
      </p>
      <p className={styles.small}>{TOLERANCE_SOURCE}</p>
    </div>
  );
}

function Written({ text }: { text: string }) {
  return text === '' ? <span className={styles.line} /> : <strong>{text}</strong>;
}

function Readings({ run, sheets }: { run: ChamberRun; sheets: readonly UnitSheet[] }) {
  const settings = useBench((state) => state.settings);
  const units = usePreferences((preferences) => preferences.units);
  const deviations = sheets.map(({ expected, readings }) => depthDeviations(expected, readings, settings));
  return (
    <table className={styles.readings}>
      <caption className="spoken">Sheet to write on</caption>
      <thead>
        <tr>
          <th scope="col">Read at</th>
          {sheets.map(({ unit }) => (
            <th key={unit.id} scope="col" colSpan={2}>
              {unit.name}
              <span>
                {WATER_WORDS[unit.water]}
                {unit.gas ? `, ${gasName(unit.gas)}` : ''}
                {unit.mode === 'gauge' ? ', gauge mode' : ''}
              </span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {run.checkpoints.map(({ name }, at) => {
          const gauge = sheets[0]!.expected[at]!;
          const others = sheets.map(({ expected }) => sayExpected(expected[at]!, units));
          const alike = others.every((texts) => texts.join() === others[0]!.join());
          return (
            <tr key={name}>
              <th scope="row">
                {name}
                <span>
                  gauge {printDepth(gauge.gaugeM, units)}, {printClock(gauge.timeS)}
                </span>
                {alike && others[0]!.map((text) => <span key={text}>{text}</span>)}
              </th>
              {sheets.map(({ unit, expected, readings }, index) => [
                <td key={`${unit.id} expected`}>
                  {printExactDepth(expected[at]!.depthM, units)}
                  {!alike && others[index]!.map((text) => <span key={text}>{text}</span>)}
                </td>,
                <td key={`${unit.id} shown`} className={styles.shown}>
                  {sayShown(deviations[index]![at]!, units)}
                  {readings[name]?.fault && <span>{readings[name].fault}</span>}
                </td>,
              ])}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** What was read, with how far off it is; nothing where there is room to write it. */
function sayShown({ standing, shownM, deviationM }: DepthDeviation, units: UnitSystem): string {
  if (standing === 'nothing shown') return 'none';
  if (shownM === undefined) return '';
  const judged = standing === 'in' ? ' ✓' : standing === 'out' ? ' ✗' : '';
  return `${depthReadText(shownM, units)} (${printDeviation(deviationM!, units)})${judged}`;
}

function Outcome({ unit, expected, readings }: UnitSheet) {
  const settings = useBench((state) => state.settings);
  const units = usePreferences((preferences) => preferences.units);
  const begun = Object.values(readings).some((own) => Object.keys(own).length > 0);
  const { headline, reasons } = verdictOf(unit, expected, readings, settings, units);
  return (
    <p className={styles.outcome}>
      <span>{unit.name}:</span>{' '}
      {begun ? <strong>{[headline, ...reasons].join(' ')}</strong> : <span className={styles.line} />}
    </p>
  );
}
