import { ourFault } from '@/app/parts/our-fault';
import { howMuchMore } from '@/lib/ways-out/how-much-more';
import { settingsThatMadeIt } from '@/lib/ways-out/unit-settings';
import { waysOut, type NoWayOut, type Question, type WayOut } from '@/lib/ways-out/ways-out';

export interface WaysAsked {
  readonly script: string;
  readonly question: Question;
}

export interface WaysFound {
  /** Empty where the dive has nothing to be avoided. */
  readonly ways: readonly (WayOut | NoWayOut)[];
  /** Of a dive without it: how much more it would have taken. */
  readonly more: readonly (WayOut | NoWayOut)[];
}

onmessage = ({ data: { script, question } }: MessageEvent<WaysAsked>) => {
  try {
    const ways = [...waysOut(script, question), ...settingsThatMadeIt(script, question)];
    const more = ways.length > 0 ? [] : howMuchMore(script, question);
    postMessage({ ways, more } satisfies WaysFound);
  } catch (error) {
    postMessage({ failure: ourFault(error) });
  }
};
