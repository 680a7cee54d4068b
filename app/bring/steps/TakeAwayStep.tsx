'use client';

import { toFirstFault } from '../../parts/first-fault';
import { leaveForDesk } from '../../parts/hand-over';
import { fileWords, saveFile } from '../../parts/save-file';
import { Button } from '../../parts/Button';
import { routes } from '../../parts/routes';
import { useStatus } from '../../parts/status';
import { AskWaysOut } from '../../working/ways-out/AskWaysOut';
import { useBring } from '../bring-context';
import { fetchedLater } from '../../parts/fetched-later';
import styles from '../bring.module.css';

const RecordWaysOut = fetchedLater(async () => (await import('../RecordWaysOut')).RecordWaysOut);

/** The dive goes to the desk, or back into a file. */
export function TakeAwayStep() {
  const made = useBring((state) => state.outcome?.made);
  const fileName = useBring((state) => state.fileName);
  const write = useBring((state) => state.write);
  const say = useStatus((status) => status.say);
  if (!made?.ok) return null;
  const title = fileName.replace(/\.[a-z0-9]{1,5}$/i, '');
  const open = (dive: string) => {
    const script = `# ${title}: a recorded dive\n${dive}`;
    if (leaveForDesk({ script, title: title.slice(0, 200) })) location.assign(routes.desk.path);
    else
      say(
        'This browser does not let a dive be passed to the desk. Export it as a file, or allow the page to keep data.',
      );
  };
  const save = async (kind: 'uddf' | 'csv') => {
    saveFile(`${fileWords(title)}-mended.${kind}`, await write(kind), kind === 'csv' ? 'text/csv' : 'application/xml');
    say(`Saved as ${kind === 'csv' ? 'CSV' : 'UDDF'}.`);
  };
  return (
    <section aria-labelledby="take" className={`${styles.step} unprinted`}>
      <RecordWaysOut script={made.script} onOpen={(way) => open(way.script)} />
      <h2 id="take">Take it on</h2>
      <p>On the desk everything works on it: the rules, other setups, the working of each number, lessons and links.</p>
      <div className={styles.row}>
        <Button kind="primary" onClick={() => toFirstFault() || open(made.script)}>
          Open on the desk
        </Button>
        <AskWaysOut target="stop">What would have avoided its stop?</AskWaysOut>
        <Button icon="save" onClick={() => toFirstFault() || void save('uddf')}>
          Export as UDDF
        </Button>
        <Button icon="save" onClick={() => toFirstFault() || void save('csv')}>
          Export as CSV
        </Button>
      </div>
      <p className={styles.soft}>
        The exports hold every sample as mended, not the simplified dive, and read back the same.
      </p>
    </section>
  );
}
