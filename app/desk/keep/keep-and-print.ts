/** What keeps the desk and prints it, fetched as soon as it is open, in one piece: reading what was kept needs the checker. */
export { DeskSheet } from './DeskSheet';
export { KeepDesk } from './KeepDesk';
