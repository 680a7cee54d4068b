import type { NetworkSwitch } from '../serve/network-switch';

/** Phones are told that their class is over before the network is closed, ms. */
const LAST_WORDS_MS = 1000;

/** Opens the server to its network for as long as there are classes; one that was open before stays so. */
export interface ClassNetwork {
  readonly begin: (network: NetworkSwitch) => void;
  /** A class is opened from this machine, or opened again where the machine may be in another network by now. */
  readonly open: () => Promise<void>;
  /** A class is over. */
  readonly over: () => void;
}

/** @param classes how many there are */
export function classNetwork(classes: () => number): ClassNetwork {
  let network: NetworkSwitch | undefined;
  let openedHere = false;
  return {
    begin: (one) => void (network = one),
    async open() {
      if (!network?.turns || (!openedHere && network.inNetwork().length > 0)) return;
      openedHere = true;
      await network.turn(true);
    },
    over() {
      if (!openedHere || classes() > 0) return;
      setTimeout(() => {
        if (!openedHere || classes() > 0) return;
        openedHere = false;
        void network?.turn(false);
      }, LAST_WORDS_MS).unref();
    },
  };
}
