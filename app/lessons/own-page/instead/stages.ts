/** In place of the site's: nothing of a page of its own is fetched later. */
export { RunStage } from '../../player/stage/RunStage';
