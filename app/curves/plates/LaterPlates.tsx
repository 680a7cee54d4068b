'use client';

import { fetchedLater } from '../../parts/fetched-later';
import type { PlateId } from '../chosen/plate-choices';
import styles from '../curves.module.css';

const later = (
  name:
    | 'AscentRateSection'
    | 'GradientFactorSection'
    | 'HalfTimesSection'
    | 'HowSureSection'
    | 'LimitsSection'
    | 'ModelsSection',
) =>
  fetchedLater<object>(
    async () => (await import('./lower-plates'))[name],
    <div className={styles.waiting} aria-busy="true" />,
  );

// One plate is open at first: the page opens without the code of the others.
export const LimitsSection = later('LimitsSection');
export const HalfTimesSection = later('HalfTimesSection');
export const AscentRateSection = later('AscentRateSection');
export const GradientFactorSection = later('GradientFactorSection');
export const ModelsSection = later('ModelsSection');
export const HowSureSection = later('HowSureSection');
export const TablesBeside = fetchedLater(async () => (await import('./TablesBeside')).TablesBeside);
export const Thumbnail = fetchedLater<{ plate: PlateId }>(
  async () => (await import('./Thumbnail')).Thumbnail,
  <div className={styles.thumbnail} />,
);
