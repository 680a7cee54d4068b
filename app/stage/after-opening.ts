/**
 * What the desk fetches as soon as it is open, in one piece: what takes hold of the dive, what rules and cylinders say
 * of it, and the picture beside it. The page comes with all of it drawn; until it is here it stands still.
 */
export { SupplyMarks } from '../pictures/gas/SupplyMarks';
export { ChaseFigure } from './figures/ChaseFigure';
export { ProfileHandles } from './figures/ProfileHandles';
export { EventSteps } from './EventSteps';
export { HoldAtEvents } from './HoldAtEvents';
export { StepEditor } from './figures/StepEditor';
export { EventMarks } from './units/EventMarks';
export { UnitInsists } from './units/UnitInsists';
export { UnitReadings } from './units/UnitReadings';
