'use client';

import type { ComponentType } from 'react';
import { fetchedLater } from '../parts/fetched-later';
import styles from './curves.module.css';

const later = (name: keyof typeof import('./lower-plates')): ComponentType =>
  fetchedLater(async () => (await import('./lower-plates'))[name], <div className={styles.waiting} aria-busy="true" />);

// Nobody sees these before scrolling: the page opens without their code, drawn as it came.
export const HalfTimesSection = later('HalfTimesSection');
export const AscentRateSection = later('AscentRateSection');
export const GradientFactorSection = later('GradientFactorSection');
export const ModelsSection = later('ModelsSection');
export const HowSureSection = later('HowSureSection');
