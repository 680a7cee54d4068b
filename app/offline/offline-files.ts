/** Files at the root of the built site: the worker that keeps the site on a machine, and what it answers in our own way. */
export const offlineFiles = { worker: 'sw.js', answers: 'sw-answers.js' };
