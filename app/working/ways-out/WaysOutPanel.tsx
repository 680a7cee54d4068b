'use client';

import { cautions } from '@/content/cautions';
import type { NoWayOut, WayOut } from '@/lib/ways-out/ways-out';
import type { Target } from '@/lib/ways-out/trouble';
import { Button } from '../../parts/Button';
import { DataTable } from '../../parts/DataTable';
import { Disclosure } from '../../parts/Disclosure';
import { Segmented } from '../../parts/Segmented';
import type { WaysAnswer } from './use-ways-out';
import styles from './ways-out.module.css';

/** One reading as dived, and as it would have been at the same instant. */
export interface BesideRow {
  readonly reading: string;
  /** As dived, then one for each way that is shown. */
  readonly values: readonly string[];
}

interface WaysOutPanelProps {
  target: Target;
  onTarget: (target: Target) => void;
  answer: WaysAnswer | undefined;
  /** The ways drawn beside the dive, at most two. */
  shown: readonly WayOut[];
  /** Left out where there is no picture to draw it in. */
  onShow?: ((way: WayOut) => void) | undefined;
  /** Left out where the dive can't be changed. */
  onUse?: ((way: WayOut) => void) | undefined;
  /** What using it is called. */
  use?: string;
  beside?: { readonly when: string; readonly ways: readonly WayOut[]; readonly rows: readonly BesideRow[] };
  /** A deep or staged dive has a caution of its own. */
  deep: boolean;
}

const TARGETS = [
  { value: 'stop', label: 'The stop' },
  { value: 'ceiling', label: 'The ceiling' },
  { value: 'slow-down', label: 'The “slow down”' },
] as const;

const NOTHING: Readonly<Record<Target, string>> = {
  stop: 'This dive is never asked to make a stop.',
  ceiling: 'No ceiling comes about on this dive.',
  'slow-down': 'No rise of this dive is too fast for the unit.',
};

/** What would have avoided a stop: each change by itself, drawn beside the dive or written into it. */
export function WaysOutPanel(props: WaysOutPanelProps) {
  const { target, onTarget, answer, shown, onShow, onUse, use = 'Use it', beside, deep } = props;
  const ways = answer?.found?.ways ?? [];
  const more = answer?.found?.more ?? [];
  const current = answer?.asked.question.target === target;
  const list = (all: readonly (WayOut | NoWayOut)[]) => (
    <WayList all={all} shown={shown} onShow={onShow} onUse={onUse} use={use} />
  );
  return (
    <div className={styles.panel}>
      <Segmented label="What is asked after" segments={TARGETS} value={target} onChange={onTarget} />
      <p>
        These are the model’s sums about a dive that is past or made up: what would have been, each change by itself and
        everything else as it was. {cautions.general}
      </p>
      {deep && <p>{cautions.deepCourse}</p>}
      <p role="status">{!answer || !current ? 'Trying every change…' : (answer.failure ?? '')}</p>
      {current && answer?.found && ways.length > 0 && list(ways)}
      {current && answer?.found && ways.length === 0 && (
        <>
          <p>
            {NOTHING[target]} <b>How much more would it have taken?</b>
          </p>
          {list(more)}
        </>
      )}
      {beside && beside.ways.length > 0 && (
        <section className={styles.beside}>
          <h3>{beside.when}</h3>
          <DataTable
            caption={`Readings ${beside.when.charAt(0).toLowerCase()}${beside.when.slice(1)}, as dived and as they would have been`}
            columns={[
              { heading: 'Reading', cell: ({ reading }: BesideRow) => reading },
              { heading: 'As dived', cell: ({ values }) => values[0] },
              ...beside.ways.map((way, index) => ({
                heading: way.title,
                cell: ({ values }: BesideRow) => values[index + 1],
              })),
            ]}
            rows={beside.rows}
          />
        </section>
      )}
      <p>{cautions.unknown}</p>
    </div>
  );
}

/** How the first and the second way that are shown are told apart. */
const DRAWN = ['Drawn dashed; rings in the chase.', 'Drawn dotted; triangles in the chase.'];

type WayListProps = Pick<WaysOutPanelProps, 'shown' | 'onShow' | 'onUse' | 'use'> & {
  all: readonly (WayOut | NoWayOut)[];
};

function WayList({ all, shown, onShow, onUse, use }: WayListProps) {
  const enough = all.filter((way): way is WayOut => !('none' in way));
  const none = all.filter((way): way is NoWayOut => 'none' in way);
  return (
    <>
      <ol className={styles.ways}>
        {enough.map((way) => {
          const drawn = shown.findIndex(({ script }) => script === way.script);
          return (
            <li key={`${way.lever} ${way.text}`}>
              <h3>{way.title}</h3>
              <p>{way.text}</p>
              {way.cost !== '' && <p className={styles.cost}>Its cost: {way.cost}.</p>}
              <span className={`${styles.tools} unprinted`}>
                {onShow && (
                  <Button aria-pressed={drawn >= 0} onClick={() => onShow(way)}>
                    Show it
                  </Button>
                )}
                {onUse && <Button onClick={() => onUse(way)}>{use}</Button>}
                {onShow && DRAWN[drawn] && <span>{DRAWN[drawn]}</span>}
              </span>
            </li>
          );
        })}
      </ol>
      {enough.length === 0 && <p>No change by itself would have been enough.</p>}
      {none.length > 0 && (
        <Disclosure summary={`What would not have: ${none.length}`}>
          <dl className={styles.none}>
            {none.map(({ lever, title, text }) => (
              <div key={`${lever} ${text}`}>
                <dt>{title}</dt>
                <dd>{text}</dd>
              </div>
            ))}
          </dl>
        </Disclosure>
      )}
    </>
  );
}
