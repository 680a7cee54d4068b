import type { Timeline } from '../../dive/timeline';
import type { Watch } from '../watch';

/** A stretch of a dive in which a unit asks for a stop, or shows nothing of the model. */
export interface AskedSpell {
  /** Who asks: the model, or a rule of the unit. A locked unit shows neither. */
  readonly by: 'model' | 'rule' | 'lock';
  readonly fromS: number;
  readonly toS: number;
}

/** Kinds of event after which the model's stop is no longer owed. */
const NO_LONGER_OWED: ReadonlySet<string> = new Set(['nothing-owed', 'ceiling-clears', 'way-up-fills']);

/**
 * When a unit asks for a stop over a whole day: from its own events for the model's, which are told at their instants, and
 * from look to look for what a rule imposes and for a lock, which comes first: from when it begins nothing else is shown.
 * In order of time within each kind; a unit in gauge mode asks for nothing.
 */
export function askedSpells({ events, timeline, tracks }: Watch): readonly AskedSpell[] {
  const lastS = timeline.timeS[timeline.length - 1]!;
  const locks = spellsWhile('lock', timeline, tracks.lockedUntilS);
  const lockedFromS = locks[0]?.fromS ?? Infinity;
  const owedSpells: AskedSpell[] = [];
  let owedFromS: number | undefined;
  for (const { kind, timeS } of events) {
    if (kind === 'stop-owed') owedFromS ??= timeS;
    else if (owedFromS !== undefined && NO_LONGER_OWED.has(kind)) {
      owedSpells.push({ by: 'model', fromS: owedFromS, toS: timeS });
      owedFromS = undefined;
    }
  }
  if (owedFromS !== undefined) owedSpells.push({ by: 'model', fromS: owedFromS, toS: lastS });
  const asked = [...owedSpells, ...spellsWhile('rule', timeline, tracks.imposedStopLeftS)]
    .filter(({ fromS }) => fromS < lockedFromS)
    .map((spell) => ({ ...spell, toS: Math.min(spell.toS, lockedFromS) }));
  return [...asked, ...locks];
}

/** The unbroken runs of samples at which a track is above nothing. */
function spellsWhile(by: 'rule' | 'lock', { timeS, length }: Timeline, track: Float64Array): readonly AskedSpell[] {
  const spells: AskedSpell[] = [];
  for (let i = 0; i < length; i += 1) {
    if (track[i]! <= 0) continue;
    const first = i;
    while (i + 1 < length && track[i + 1]! > 0) i += 1;
    spells.push({ by, fromS: timeS[first]!, toS: timeS[Math.min(i + 1, length - 1)]! });
  }
  return spells;
}
