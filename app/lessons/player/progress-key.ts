/** Where the progress in lessons is kept on this machine. */
export const progressKey = 'halftime.lessons';
