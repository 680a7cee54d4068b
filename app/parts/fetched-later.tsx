import {
  createContext,
  lazy,
  memo,
  Suspense,
  useCallback,
  useContext,
  useEffect,
  useState,
  type ComponentType,
  type ReactNode,
} from 'react';
import { Button } from './Button';
import styles from './fetched-later.module.css';

/**
 * A part of the page whose code is fetched once it is to be drawn, so that the page opens sooner without it. `meanwhile`
 * is drawn until then; where the code can't be had, `unfetched`, which says so and offers to try again.
 */
export function fetchedLater<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
  meanwhile: ReactNode | ((props: Props) => ReactNode) = null,
  unfetched: ComponentType = Unfetched,
): ComponentType<Props> {
  const fetched = () => lazy(async () => ({ default: await load().catch(() => unfetched as ComponentType<Props>) }));
  let part = fetched();
  function FetchedLater(props: Props) {
    const [Part, setPart] = useState(() => part);
    useEffect(() => counted(1), []);
    const again = useCallback(() => {
      part = fetched();
      setPart(() => part);
    }, []);
    return (
      <TryAgain value={again}>
        <Suspense fallback={typeof meanwhile === 'function' ? meanwhile(props) : meanwhile}>
          <Part {...props} />
          <Arrival />
        </Suspense>
      </TryAgain>
    );
  }
  // A page from the server keeps showing this part as it came until the code is there, unless it is drawn anew meanwhile.
  return memo(FetchedLater) as ComponentType<Props>;
}

/** How many parts are to be drawn whose code isn't there. */
let onTheWay = 0;

/** Counts in one more part that is on its way, or one less; what it returns takes that back. */
function counted(by: number): () => void {
  onTheWay += by;
  return () => void (onTheWay -= by);
}

/** Beside a part: it answers once the part does. */
function Arrival() {
  useEffect(() => counted(-1), []);
  return null;
}

/** Whether all that is to be drawn is there and answers; so from the first where nothing of the page is fetched later. */
export const isAllThere = () => onTheWay === 0;

const TryAgain = createContext<() => void>(() => undefined);

/** One for each part that stands unfetched: several are often missing for one reason, and come back together. */
const waiting = new Set<() => void>();
const tryAllAgain = () => [...waiting].forEach((again) => again());

function useWaiting(): void {
  const again = useContext(TryAgain);
  useEffect(() => {
    waiting.add(again);
    return () => void waiting.delete(again);
  }, [again]);
}

function Unfetched() {
  useWaiting();
  return (
    <div role="alert" className={styles.unfetched}>
      <p>This part of the page could not be fetched; you may be offline. Nothing on the page is lost.</p>
      <Button onClick={tryAllAgain}>Try again</Button>
    </div>
  );
}
