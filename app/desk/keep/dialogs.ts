/** What is opened from the bar above the desk, fetched in one piece when the first of it is asked for. */
export { PassOnDialog } from './PassOnDialog';
export { PrintDialog } from './PrintDialog';
export { SavedDivesPanel } from './SavedDivesPanel';
