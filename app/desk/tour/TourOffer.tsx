'use client';

import { Button } from '../../parts/Button';
import { usePreferences } from '../../parts/preferences';
import { safeSession } from '../../parts/safe-storage';
import { putOffKey } from './offer-script';
import styles from './tour.module.css';

interface TourOfferProps {
  onShow: () => void;
  /** The offer is gone from the page; the focus has to go somewhere. */
  onRefused: () => void;
}

/** Offers the tour in a line of the desk, until it is taken or refused. */
export function TourOffer({ onShow, onRefused }: TourOfferProps) {
  const setTour = usePreferences((state) => state.setTour);
  const leave = () => {
    document.documentElement.dataset['offer'] = 'settled';
  };
  const putOff = () => {
    leave();
    // Where this can't be kept, it is offered again after a reload.
    safeSession.setItem(putOffKey, 'yes');
    onRefused();
  };
  return (
    <p className={`${styles.offer} unprinted`} role="group" aria-label="A tour of the desk">
      <span>
        New here?<span className={styles.more}> Five stops round the desk.</span>
      </span>
      <Button
        kind="quiet"
        aria-label="Show me the desk"
        onClick={() => {
          leave();
          setTour('settled');
          onShow();
        }}
      >
        Show me
      </Button>
      <Button kind="quiet" aria-label="Not now: no tour" onClick={putOff}>
        Not now
      </Button>
      <Button
        kind="quiet"
        aria-label="Never offer a tour"
        onClick={() => {
          leave();
          setTour('settled');
          onRefused();
        }}
      >
        Never
      </Button>
    </p>
  );
}
