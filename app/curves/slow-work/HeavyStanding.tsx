import { Button } from '../../parts/Button';
import type { HeavyJob } from './heavy-work';
import type { HeavyState } from './use-heavy-work';
import styles from '../curves.module.css';

interface HeavyStandingProps {
  /** What is worked out: "the map". */
  what: string;
  work: HeavyState<HeavyJob> & { stop: () => void; again: () => void };
}

/** How far a long piece of work has come, with a way to stop it and to start it again. */
export function HeavyStanding({ what, work }: HeavyStandingProps) {
  const { standing, progress, failure, last } = work;
  const share = progress ? progress.done / progress.of : 0;
  const words = {
    working: `Working out ${what}: ${Math.round(share * 100)}%.${last ? ' The last one stays until it is ready.' : ''}`,
    done: `Worked out: ${what}.`,
    stopped: `Stopped.${last ? ' The last one that was finished is shown; it may be of other settings.' : ` Nothing of ${what} is shown yet.`}`,
    failed: failure ?? '',
  }[standing];
  return (
    <div className={`${styles.standing} unprinted`}>
      <p role="status">{words}</p>
      {standing === 'working' && <progress aria-label={`Working out ${what}`} value={share} max={1} />}
      {standing === 'working' && <Button onClick={work.stop}>Stop working out {what}</Button>}
      {(standing === 'stopped' || standing === 'failed') && <Button onClick={work.again}>Work out {what} again</Button>}
    </div>
  );
}
