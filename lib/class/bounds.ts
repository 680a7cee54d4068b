/** The largest request a phone or a teacher's page sends about one answer, bytes. */
export const MOST_SENT_BYTES = 16 * 1024;
/** Points of a curve that travel; a hand draws no finer. */
export const MOST_SKETCH_POINTS = 60;
/** Options of one question. */
export const MOST_OPTIONS = 8;
/** Rounds of one question: asked, and asked again. */
export const MOST_ROUNDS = 2;
/** A class in which nothing was said for so long is over, ms. */
export const IDLE_MS = 8 * 3600_000;
/** Replies to wrong numbers that travel with one question. */
export const MOST_REPLIES = 24;
