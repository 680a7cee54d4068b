/** Longest no-stop time that is told as a figure, min; beyond it a person reads "more than 99 min". */
export const NO_STOP_CAP_MIN = 99;
