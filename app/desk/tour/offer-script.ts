import { preferencesKey } from '../../parts/theme';

/** Says in this window that the offer was put off; a later visit may make it again. */
export const putOffKey = 'halftime.tour.put-off';

/**
 * Runs before the desk is painted, so that an offer that is settled takes no room that it would then give back; nor is it
 * made to whoever came to see a dive played.
 * Blocked storage leaves the offer standing.
 */
export const offerScript = `try{if(location.hash.startsWith('#play=')||sessionStorage.getItem(${JSON.stringify(putOffKey)})||JSON.parse(localStorage.getItem(${JSON.stringify(preferencesKey)})).state.tour==='settled')document.documentElement.dataset.offer='settled'}catch(e){}`;
