import { AIR, nitrogenFraction, type Gas } from '../physics/gas';
import { leastPO2BarAt } from '../physics/oxygen-limits';
import { maximumOperatingDepthM, minimumOperatingDepthM } from '../physics/oxygen-depth';

/*
 * Depths that follow from Dalton's law: each gas of a mixture presses as if it were alone. Pressures in bar, depths in
 * metres, fractions 0–1. A depth is negative where the surface itself is already beyond it.
 */

/** The surface's pressure and what a metre of water adds to it, bar. */
export interface Site {
  readonly surfaceBar: number;
  readonly barPerMetre: number;
}

/** Whether oxygen counts as narcotic: authorities differ. Helium is taken never to. */
export type Narcotic = 'nitrogen' | 'nitrogen and oxygen';

export interface PartialPressures {
  readonly oxygenBar: number;
  readonly nitrogenBar: number;
  readonly heliumBar: number;
}

/** Absolute pressure at a depth of a site, bar. */
export function ambientBarAt(depthM: number, { surfaceBar, barPerMetre }: Site): number {
  return surfaceBar + depthM * barPerMetre;
}

/** The partial pressures of a dry gas at an ambient pressure, bar (Dalton's law). */
export function partialPressures(gas: Gas, ambientBar: number): PartialPressures {
  return {
    oxygenBar: gas.o2 * ambientBar,
    nitrogenBar: nitrogenFraction(gas) * ambientBar,
    heliumBar: gas.he * ambientBar,
  };
}

/** The deepest a gas may be breathed under an oxygen limit, m; below 0 where not even at the surface. */
export function gasModM(gas: Gas, pO2LimitBar: number, { surfaceBar, barPerMetre }: Site): number {
  return maximumOperatingDepthM(gas.o2, pO2LimitBar, surfaceBar, barPerMetre);
}

/**
 * The shallowest a gas has the customary least of oxygen, m: 0 when it has at the surface. 0.16 bar unless told, or what
 * the air of the place has if that is less. Common practice.
 */
export function hypoxicAboveM(
  gas: Gas,
  { surfaceBar, barPerMetre }: Site,
  leastPO2Bar: number = leastPO2BarAt(surfaceBar),
): number {
  return minimumOperatingDepthM(gas.o2, leastPO2Bar, surfaceBar, barPerMetre);
}

/**
 * Equivalent air depth, m: where air has the nitrogen pressure this gas has here. For a gas without helium.
 * EAD = (p_amb · F_N2 / 0.79 − p_surface) / (bar per metre). Below 0 where the surface's air has more nitrogen.
 */
export function equivalentAirDepthM(gas: Gas, depthM: number, site: Site): number {
  return depthWithShareM(nitrogenFraction(gas) / nitrogenFraction(AIR), depthM, site);
}

/** The part of a gas that is narcotic, 0–1. */
export function narcoticFraction(gas: Gas, narcotic: Narcotic): number {
  return narcotic === 'nitrogen' ? nitrogenFraction(gas) : 1 - gas.he;
}

/**
 * Equivalent narcotic depth, m: where air has the same pressure of narcotic gas as this gas has here.
 * END = (p_amb · F_narcotic / F_narcotic of air − p_surface) / (bar per metre).
 */
export function equivalentNarcoticDepthM(gas: Gas, depthM: number, narcotic: Narcotic, site: Site): number {
  return depthWithShareM(narcoticFraction(gas, narcotic) / narcoticFraction(AIR, narcotic), depthM, site);
}

export interface BestMixWish {
  readonly pO2LimitBar: number;
  /** As narcotic as air at this depth at most; without it, no helium. */
  readonly narcosis?: { readonly asAirAtM: number; readonly narcotic: Narcotic };
}

/** The gas richest in oxygen that keeps the limit at a depth, with the least helium that keeps narcosis as wished. */
export function bestMix(depthM: number, { pO2LimitBar, narcosis }: BestMixWish, site: Site): Gas {
  const ambientBar = ambientBarAt(depthM, site);
  const o2 = Math.min(1, pO2LimitBar / ambientBar);
  if (!narcosis) return { o2, he: 0 };
  const { asAirAtM, narcotic } = narcosis;
  const mostNarcotic = (ambientBarAt(asAirAtM, site) * narcoticFraction(AIR, narcotic)) / ambientBar;
  const he = 1 - mostNarcotic - (narcotic === 'nitrogen' ? o2 : 0);
  return { o2, he: Math.min(1 - o2, Math.max(0, he)) };
}

/** Where the ambient pressure is some share of that at a depth; written so that a share of 1 gives the depth to the last bit. */
function depthWithShareM(share: number, depthM: number, { surfaceBar, barPerMetre }: Site): number {
  return depthM * share + ((share - 1) * surfaceBar) / barPerMetre;
}
