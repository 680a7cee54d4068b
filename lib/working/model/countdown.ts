import type { Timeline } from '../../dive/timeline';
import type { RuleEvent } from '../../rules/event';
import { SAME_INSTANT_S } from '../../dive/sample-instants';

/** A stretch of a dive in which a stop's time runs down, stands still or grows, or a moment at which some is added. */
export interface Spell {
  readonly kind: 'counts' | 'waits' | 'grows' | 'added';
  readonly fromS: number;
  readonly toS: number;
  /** What is left at its end, s. */
  readonly leftS: number;
  /** The event that added time. */
  readonly event?: RuleEvent;
}

interface Counted {
  readonly timeline: Timeline;
  /** 1 at each sample the unit looked at: it counts from look to look. */
  readonly looked: Uint8Array;
  /** What is left of the stop at every sample, s. */
  readonly leftS: Float64Array;
  readonly fromSample: number;
  readonly toSample: number;
  /** Events that add time, and how much each does. */
  readonly added: ReadonlyMap<RuleEvent, number>;
  /** Whether, at one sample, time is added before it runs down or after. */
  readonly addedFirst: boolean;
}

/** What became of a stop's time, spell by spell, read off the unit's own count. */
export function spellsOf(counted: Counted): Spell[] {
  const { timeline, looked, leftS, fromSample, toSample, added, addedFirst } = counted;
  const { timeS } = timeline;
  const spells: Spell[] = [];
  const run = (fromS: number, toS: number, beforeS: number, afterS: number) => {
    const change = afterS - beforeS;
    const kind = change < -SAME_INSTANT_S ? 'counts' : change > SAME_INSTANT_S ? 'grows' : 'waits';
    const spell = spells.at(-1);
    if (spell?.kind === kind && spell.toS === fromS) spells[spells.length - 1] = { ...spell, toS, leftS: afterS };
    else spells.push({ kind, fromS, toS, leftS: afterS });
  };
  let last = looked.lastIndexOf(1, fromSample);
  for (let i = fromSample + 1; i <= toSample; i += 1) {
    if (looked[i] === 0) continue;
    const fromS = timeS[last]!;
    const toS = timeS[i]!;
    const events = [...added].filter(([event]) => event.timeS > fromS && event.timeS <= toS);
    const addedS = events.reduce((sum, [, size]) => sum + size, 0);
    const before = leftS[last]!;
    const after = leftS[i]!;
    last = i;
    if (!addedFirst && addedS > 0) run(fromS, toS, before, after - addedS);
    let so = addedFirst || addedS === 0 ? before : after - addedS;
    for (const [event, size] of events) {
      so += size;
      spells.push({ kind: 'added', fromS: toS, toS, leftS: so, event });
    }
    if (addedFirst || addedS === 0) run(fromS, toS, so, after);
  }
  return spells;
}
