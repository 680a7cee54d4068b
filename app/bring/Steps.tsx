import { ColumnsStep } from './ColumnsStep';
import { DivesStep } from './DivesStep';
import { FaultsStep } from './FaultsStep';
import { TakeAwayStep } from './TakeAwayStep';
import { UnitStep } from './UnitStep';

/** What is done with a file once it is chosen. */
export function Steps() {
  return (
    <>
      <ColumnsStep />
      <FaultsStep />
      <DivesStep />
      <UnitStep />
      <TakeAwayStep />
    </>
  );
}
