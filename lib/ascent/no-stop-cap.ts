/** Longest no-stop time that is told as a figure, min; beyond it a person reads "more than 99 min". */
export const NO_STOP_CAP_MIN = 99;

/** A search by halving ends when what is left is no longer than this, min. */
export const SEARCH_END_MIN = 1e-9;
