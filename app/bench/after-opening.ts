/**
 * What the bench fetches as soon as it is open, in one piece: the reader of runs, the model and the rules that say what
 * units should show, and the forms around them. The page comes with all of it drawn; until it is here it stands still.
 */
export { AboutForm } from './AboutForm';
export { ChamberForm } from './ChamberForm';
export { FilledIn } from './FilledIn';
export { KeptSheets } from './KeptSheets';
export { RunFaults, TooFast } from './RunFaults';
export { UnitsForm } from './UnitsForm';
