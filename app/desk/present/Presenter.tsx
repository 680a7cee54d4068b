'use client';

import { useEffect, useMemo, useRef, useState, type RefObject } from 'react';
import { printDayClock } from '@/lib/dive/day-clock';
import { Button } from '../../parts/Button';
import { IconButton } from '../../parts/IconButton';
import { Menu } from '../../parts/Menu';
import { usePreferences } from '../../parts/preferences';
import { useDesk, useDeskStore } from '../../stage/desk-context';
import { READING_IDS } from '../../stage/reading-ids';
import { momentAfter, momentBefore, momentIndexAt } from '../../stage/moments';
import { useMoments } from '../../stage/use-course';
import { fetchedLater } from '../../parts/fetched-later';
import { useFocusAfterSteering } from '../use-focus-after-steering';
import { PanelChooser } from './PanelChooser';
import { PointerRing } from './PointerRing';
import { PresenterHelp } from './PresenterHelp';
import { doingOfKey, type PresenterDoing } from './presenter-keys';
import { useStage } from '../../stage/use-stage';
import { useStripHeight } from './use-strip-height';
import styles from './present.module.css';

const SteerBar = fetchedLater(async () => (await import('../steer/hand')).SteerBar);

/** Type sizes to choose from, as shares of what fits the screen. */
const SIZES = [0.7, 0.85, 1, 1.2, 1.45];
const USUAL_SIZE = 2;

/** Larger than a lesson's where the screen is small: a sheet is composed to its height, and says less at once. */
const SHEET_TYPE = 'clamp(100%, max(min(1.5vw, 2.7vh), min(1.8vw, 2.35vh)), 300%)';

const OF_TIME: readonly PresenterDoing[] = ['next', 'back', 'play'];

/** Letters of a sentence from which on it is set smaller, so that it stands whole in its strip. */
const LONG = 150;
const LONGEST = 300;
const longOf = ({ length }: string) => (length > LONGEST ? 'most' : length > LONG ? 'much' : undefined);

interface PresenterProps {
  stage: RefObject<HTMLElement | null>;
  onLeave: () => void;
}

/** The presenter's hand on the desk: a strip of controls at the foot, the clicker's keys, and the ring. */
export function Presenter({ stage, onLeave }: PresenterProps) {
  const store = useDeskStore();
  const scene = useDesk((state) => state.scene);
  const cursorS = useDesk((state) => state.cursorS);
  const playing = useDesk((state) => state.playing);
  const covered = useDesk((state) => state.covered);
  const moments = useMoments();
  const holds = usePreferences((state) => state.holds.class);
  const setHolds = usePreferences((state) => state.setHolds);
  const [ring, setRing] = useState(false);
  const [help, setHelp] = useState(false);
  const [size, setSize] = useState(USUAL_SIZE);
  useStage(stage, SIZES[size]!, onLeave, SHEET_TYPE);
  const strip = useRef<HTMLDivElement>(null);
  useStripHeight(strip);
  const steering = useDesk((state) => state.run !== undefined);
  useFocusAfterSteering(strip, steering);

  const doings = useMemo((): Record<PresenterDoing, () => void> => {
    const goTo = (moment: { timeS: number } | undefined) => {
      store.getState().pause();
      if (moment) store.getState().setCursor(moment.timeS);
    };
    const resize = (by: number) => setSize((now) => Math.min(Math.max(0, now + by), SIZES.length - 1));
    return {
      next() {
        const { heldAtS, cursorS, play } = store.getState();
        // Where playing waits, the same press goes on.
        if (heldAtS === undefined) goTo(momentAfter(moments, cursorS));
        else play();
      },
      back: () => goTo(momentBefore(moments, store.getState().cursorS)),
      play() {
        const { playing, play, pause } = store.getState();
        if (playing) pause();
        else play();
      },
      cover() {
        const { covered, change } = store.getState();
        change({ covered: covered.length === 0 ? READING_IDS : [] });
      },
      reveal() {
        const { covered, change } = store.getState();
        const next = READING_IDS.find((id) => covered.includes(id));
        change({ covered: covered.filter((id) => id !== next) });
      },
      highlight: () => setRing((on) => !on),
      larger: () => resize(1),
      smaller: () => resize(-1),
      help: () => setHelp((on) => !on),
      leave: onLeave,
    };
  }, [store, moments, onLeave]);

  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const doing = doingOfKey(event);
      // Under a hand on the lever, time has another owner.
      if (!doing || (store.getState().run && OF_TIME.includes(doing))) return;
      event.preventDefault();
      doings[doing]();
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [doings, store]);

  const index = momentIndexAt(moments, cursorS);
  const more = (
    <>
      <Button icon="covered" onClick={doings.cover}>
        <span className={styles.word}>{covered.length === 0 ? 'Cover' : 'Uncover'}</span>
      </Button>
      <PanelChooser />
    </>
  );
  return (
    <>
      <div
        ref={strip}
        className={`${styles.hand} unprinted`}
        role="group"
        aria-label="Presenting"
        data-part="time"
        data-steering={steering || undefined}
      >
        {steering ? (
          <div className={styles.steering}>
            <SteerBar />
          </div>
        ) : (
          <>
            <IconButton icon="stepBack" label="Back to the point or event before" onClick={doings.back} />
            <IconButton
              data-way="play"
              icon={playing ? 'pause' : 'play'}
              label={playing ? 'Pause' : 'Play'}
              onClick={doings.play}
            />
            <IconButton icon="stepOn" label="On to the next point or event" onClick={doings.next} />
            <p className={styles.moment} data-part="moment" data-long={longOf(moments[index]!.name)}>
              <b>{printDayClock(scene.timeline, cursorS)}</b> {index + 1} of {moments.length}
              {/* What happens would give away what a class is to find. */}
              {covered.length === 0 && <span>. {moments[index]!.name}</span>}
            </p>
          </>
        )}
        {!steering && <span className={styles.inHand}>{more}</span>}
        <Menu icon="more" label="More for presenting">
          <span className={steering ? styles.sizes : styles.foldedMore}>{more}</span>
          {!steering && (
            <Button data-done="" onClick={() => store.getState().startRun()}>
              Steer by hand
            </Button>
          )}
          <Button aria-pressed={holds} onClick={() => setHolds('class', !holds)}>
            Hold when something happens
          </Button>
          <Button aria-pressed={ring} onClick={doings.highlight}>
            Ring
          </Button>
          <span className={styles.sizes}>
            <IconButton icon="minus" label="Smaller type" disabled={size === 0} onClick={doings.smaller} />
            <IconButton icon="plus" label="Larger type" disabled={size === SIZES.length - 1} onClick={doings.larger} />
          </span>
          <Button icon="why" data-done="" onClick={doings.help}>
            Keys
          </Button>
        </Menu>
        <IconButton icon="close" label="Leave the presenter’s view" onClick={onLeave} />
      </div>
      <PointerRing always={ring} />
      {help && <PresenterHelp onClose={() => setHelp(false)} />}
    </>
  );
}
