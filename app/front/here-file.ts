/** Told by the server that `npm start` runs; a site put elsewhere has no such file. */
export const hereFile = 'here.json';
