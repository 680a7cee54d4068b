/** The plates further down the page, fetched in one piece once the page is open. */
export { AscentRateSection } from './AscentRateSection';
export { GradientFactorSection } from './GradientFactorSection';
export { HalfTimesSection } from './HalfTimesSection';
export { HowSureSection } from './HowSureSection';
export { ModelsSection } from './ModelsSection';
