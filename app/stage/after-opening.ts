/**
 * What the desk fetches as soon as it is open, in one piece: the pictures, the readings, and what rules say of the dive.
 * The page comes with all of it drawn; until it is here it stands still.
 */
export { ChaseFigure } from './figures/ChaseFigure';
export { ProfileFigure } from './figures/ProfileFigure';
export { ReadingsPanel } from './ReadingsPanel';
export { EventSteps } from './EventSteps';
export { HoldAtEvents } from './HoldAtEvents';
export { StepEditor } from './figures/StepEditor';
export { UnitInsists } from './units/UnitInsists';
export { WhereInWords } from './announcing/WhereInWords';
export { Announcer } from './announcing/Announcer';
