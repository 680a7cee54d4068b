import type { Settings } from '../dive/dive';

/**
 * What is asked of the tissues, beside what they did: gradient factors, the plan of the way up, and the gases there are for
 * it. One timeline may be seen under many. A dive's settings are limits too.
 */
export type Limits = Pick<Settings, 'gradientFactors' | 'plan' | 'carried' | 'gas'>;
