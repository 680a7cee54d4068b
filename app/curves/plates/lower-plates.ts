/** The plates that are not open at first, fetched in one piece once the page is. */
export { AscentRateSection } from './AscentRateSection';
export { GradientFactorSection } from './GradientFactorSection';
export { HalfTimesSection } from './HalfTimesSection';
export { HowSureSection } from './HowSureSection';
export { LimitsSection } from './LimitsSection';
export { ModelsSection } from './ModelsSection';
