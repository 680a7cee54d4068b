/** How far a dive, its instruments and its cylinders may go. The script, the forms and the schemas all ask here. */

export const DEEPEST_M = 350;
export const LONGEST_S = 7 * 24 * 3600;
/** The shortest step, s: what is shorter is no time on a clock that runs for a week, and a change of depth in no time has no rate. */
export const SHORTEST_S = 0.001;

/** How fast a descent goes that gives no rate, where the plan gives none either, m/min. */
export const USUAL_DESCENT_M_MIN = 18;

export const LONGEST_SETUP_NAME = 60;
export const MOST_SETUPS = 12;
export const DEPTH_OFFSET_RANGE_M = [-10, 10] as const;
export const DEPTH_SCALE_RANGE = [0.8, 1.2] as const;
export const MOST_MEMORY_LOSSES = 10;

/** Water volumes of one supply, L: from a cartridge to four large cylinders on one valve. */
export const CYLINDER_RANGE_L = [0.1, 100] as const;
/** Pressures a cylinder may be filled to, bar on the gauge. */
export const FILL_RANGE_BAR = [1, 450] as const;
/** Breathing taken, L/min: from next to nothing to far beyond what anyone keeps up. */
export const BREATHING_RANGE_L_MIN = [0.1, 200] as const;
export const MOST_CYLINDERS = 12;
export const LONGEST_CYLINDER_NAME = 30;
export const STRESS_FACTOR_RANGE = [1, 5] as const;
