/** Told by the server that `npm start` runs; a site put elsewhere has no such file. */
export const hereFile = 'here.json';
/** What is posted to it is no longer than this. */
export const MOST_ASKED_BYTES = 200;
