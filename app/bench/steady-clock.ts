/** Seconds since 1970 that never run backwards, whatever is done to the computer's clock. */
export interface SteadyClock {
  /** The time now, and no less than a time that is known to be past. */
  readonly nowS: (pastS: number) => number;
  /** How far the computer's clock was put back so far, s. */
  readonly putBackS: () => number;
}

/** A run goes on from where it was when the clock is put back; the time away is lost if that happens while no window is open. */
export function steadyClock(wallS: () => number = () => Date.now() / 1000): SteadyClock {
  let aheadS = 0;
  let lastS = 0;
  return {
    nowS(pastS) {
      const floorS = Math.max(lastS, pastS);
      const nowS = wallS() + aheadS;
      if (nowS < floorS) aheadS += floorS - nowS;
      lastS = Math.max(nowS, floorS);
      return lastS;
    },
    putBackS: () => aheadS,
  };
}
