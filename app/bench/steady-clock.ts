import * as z from 'zod';

/** Where a clock stands, kept between visits of the page. */
export const clockStandingSchema = z.object({
  /** How far the computer's clock was put back so far, s. */
  aheadS: z.number().min(0),
  /** The latest time the clock has shown, s since 1970. */
  lastS: z.number().min(0),
});
export type ClockStanding = z.infer<typeof clockStandingSchema>;

/** Seconds since 1970 that never run backwards, whatever is done to the computer's clock. */
export interface SteadyClock {
  /** The time now, and no less than a time that is known to be past. */
  readonly nowS: (pastS: number) => number;
  /** How far the computer's clock was put back so far, s. */
  readonly putBackS: () => number;
  readonly standing: () => ClockStanding;
  /** Goes on from where a clock stood when the page was left; from the computer's clock where that is not known. */
  readonly goOn: (from: ClockStanding | undefined) => void;
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
    standing: () => ({ aheadS, lastS }),
    goOn(from) {
      ({ aheadS, lastS } = from ?? { aheadS: 0, lastS: 0 });
    },
  };
}
