import { ColumnsStep } from './ColumnsStep';
import { DivesStep } from './DivesStep';
import { FaultsStep } from './FaultsStep';
import { Records } from '../Records';
import { TakeAwayStep } from './TakeAwayStep';
import { UnitStep } from './UnitStep';
import styles from '../bring.module.css';

/** What is done with a file once it is chosen. */
export function Steps() {
  return (
    <>
      <ColumnsStep />
      <div className={styles.beside}>
        <FaultsStep />
        <Records />
      </div>
      <DivesStep />
      <UnitStep />
      <TakeAwayStep />
    </>
  );
}
