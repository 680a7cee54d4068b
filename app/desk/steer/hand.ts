/** What steers, fetched once somebody does. */
export { SteerBar } from './SteerBar';
export { SteerLever } from './SteerLever';
