/** A dive beside a step, fetched in one piece with the first step that shows one. */
export { RunStage } from './RunStage';
export { Stage } from './Stage';
export { TryStage } from './TryStage';
