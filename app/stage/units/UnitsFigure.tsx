'use client';

import { useMemo } from 'react';
import { shownAt } from '@/lib/rules/unit/shown';
import { compareSetups } from '@/lib/sayings/compare-setups';
import { unitSayings, type UnitReadingId } from '@/lib/sayings/unit-readings';
import { Button } from '../../parts/Button';
import { Disclosure } from '../../parts/Disclosure';
import { usePreferences } from '../../parts/preferences';
import { cursorSample } from '../desk-store';
import { useDesk, useDeskOncePainted } from '../desk-context';
import { PictureFrame } from '../figures/PictureFrame';
import { usePicture } from '../figures/use-picture';
import { DeskWhy } from '../why/DeskWhy';
import { SetupEditor } from './SetupEditor';
import { UNIT_QUESTIONS } from './unit-questions';
import { watchesOf } from '../../pictures/scene-watches';
import { UnitBandsPicture, unitBandsHeight } from '../../pictures/units/UnitBandsPicture';
import styles from './units-beside.module.css';
import shared from './units.module.css';

/** One dive as several units see it: when each asks for a stop, what differs between them at the cursor, and what is so. */
export function UnitsFigure() {
  const watches = useDesk((state) => watchesOf(state.scene));
  const sample = useDeskOncePainted(cursorSample);
  const unit = useDesk((state) => state.unit);
  const chooseUnit = useDesk((state) => state.chooseUnit);
  const units = usePreferences((state) => state.units);
  const shown = watches.map((watch) => shownAt(watch, sample, units));
  const said = shown.map((one) => unitSayings(one, units));
  const rows = (Object.keys(said[0]!) as UnitReadingId[]).map((id) => ({
    label: said[0]![id].name,
    why: UNIT_QUESTIONS[id],
    cells: said.map((one) => one[id].text),
  }));
  // Where one unit stands alone, all it shows is of interest.
  const alike = watches.length > 1 ? rows.filter(({ cells }) => cells.every((cell) => cell === cells[0])) : [];
  const right = watches[0]!;
  const { ref, ...picture } = usePicture(() => unitBandsHeight(watches.length));
  const sentences = useMemo(
    () => watches.slice(1).flatMap((watch) => compareSetups(watch, right, units).sentences),
    [watches, right, units],
  );

  return (
    <PictureFrame
      id="units"
      title="Units side by side"
      sentence={
        watches.length === 1
          ? 'Only a unit that is set right watches this dive. Add one that is not.'
          : `${watches.length} units watch the same dive; what differs from the one set right is marked with ≠.`
      }
      columns={[
        { heading: 'Reading', cell: (row: (typeof rows)[number]) => row.label },
        ...watches.map((watch, index) => ({
          heading: watch.setup.name,
          cell: (row: (typeof rows)[number]) => row.cells[index]!,
        })),
      ]}
      rows={() => rows}
    >
      <div ref={ref} className={styles.bands}>
        <UnitBandsPicture {...picture} height={unitBandsHeight(watches.length)} watches={watches} />
      </div>
      <div className={styles.unitTable} role="region" aria-label="What each unit shows now" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">Shows now</th>
              {watches.map((watch, index) => (
                <th key={watch.setup.name} scope="col" className={index === unit ? styles.chosen : undefined}>
                  <span className={styles.unitHead}>
                    {watch.setup.name}
                    <Button kind="quiet" aria-pressed={index === unit} onClick={() => chooseUnit(index)}>
                      {index === unit ? 'Shown on the dive' : 'Show on the dive'}
                    </Button>
                  </span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows
              .filter((row) => !alike.includes(row))
              .map((row) => (
                <tr key={row.label}>
                  <th scope="row">{row.label}</th>
                  {row.cells.map((cell, index) => (
                    <td key={index} className={cell === row.cells[0] ? undefined : styles.differs}>
                      {cell !== row.cells[0] && <span aria-label="differs: ">≠ </span>}
                      {cell}
                      {row.why?.shows(shown[index]!) && (
                        <DeskWhy
                          small
                          unit={index}
                          reading={row.why.reading}
                          about={`${row.why.about} by ${watches[index]!.setup.name}`}
                        />
                      )}
                    </td>
                  ))}
                </tr>
              ))}
          </tbody>
        </table>
      </div>
      {alike.length > 0 && (
        <Disclosure summary={`The same on all of them now: ${alike.length}`}>
          <dl className={styles.alike}>
            {alike.map(({ label, cells: [cell] }) => (
              <div key={label}>
                <dt>{label}</dt>
                <dd>{cell}</dd>
              </div>
            ))}
          </dl>
        </Disclosure>
      )}
      {sentences.length > 0 && (
        <ul className={shared.sentences}>
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <SetupEditor />
    </PictureFrame>
  );
}
