import { Dialog } from '../../parts/Dialog';
import { ASK_KEY } from '../../stage/announcing/ask-key';
import { PRESENTER_KEYS } from './presenter-keys';
import styles from './present.module.css';

/** The keys of the presenter's view. */
export function PresenterHelp({ onClose }: { onClose: () => void }) {
  return (
    <Dialog open onClose={onClose} title="Keys for presenting">
      <dl className={styles.keys}>
        {PRESENTER_KEYS.map(({ doing, names, does }) => (
          <div key={doing}>
            <dt>{names}</dt>
            <dd>{does}</dd>
          </div>
        ))}
        <div>
          <dt>{ASK_KEY}</dt>
          <dd>Say where the diver is, to whoever listens</dd>
        </div>
      </dl>
    </Dialog>
  );
}
