/**
 * What keeps the desk, prints it and helps to write its dive, fetched as soon as it is open, in one piece: reading what
 * was kept needs the checker, and the ready dives are many.
 */
export { HeldHere } from '../HeldHere';
export { DeskSheet } from './DeskSheet';
export { KeepDesk } from './KeepDesk';
export { OverlaySentence } from '../../stage/figures/OverlayChooser';
export { PictureChooser } from '../PictureChooser';
export { ReadyDives, WriteInUnits } from '../ReadyDives';
export { ScriptHelp } from '../ScriptHelp';
