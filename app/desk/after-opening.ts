/**
 * What the desk fetches as soon as it is open, in one piece: what takes hold of the dive, what rules and cylinders say
 * of it, and the picture beside it. The page comes with all of it drawn; until it is here it stands still.
 */
export { SupplyMarks } from './exposure/SupplyMarks';
export { ChaseFigure } from './pictures/ChaseFigure';
export { ProfileHandles } from './pictures/ProfileHandles';
export { EventSteps } from './present/EventSteps';
export { StepEditor } from './StepEditor';
export { EventMarks } from './units/EventMarks';
export { UnitReadings } from './units/UnitReadings';
