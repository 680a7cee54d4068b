/** Depths and times that the plates of no-stop times and limits go to. */
export const DEEPEST_M = 60;
export const LONGEST_MIN = 100;
