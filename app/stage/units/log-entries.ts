import { sampleFromS } from '@/lib/dive/timeline';
import { saySupplyEvent } from '@/lib/exposure/supply-events';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { eventText, EVENT_KINDS } from '@/lib/rules/all';
import type { Target } from '@/lib/ways-out/trouble';
import type { Watch } from '@/lib/rules/watch';
import type { EventVoice } from '../../pictures/profile/event-lane';
import { supplyOf } from '../../pictures/scene-exposure';
import type { Scene } from '../../pictures/scene';
import { saidBy } from './event-voice';

/** One thing in the desk's log. */
export interface LogEntry {
  /** When the readings show it. */
  readonly timeS: number;
  readonly text: string;
  readonly kind: string;
  /** In a word or two, as its mark on the dive has it. */
  readonly word: string;
  /** Which of the three says so: they never share a colour or a mark. */
  readonly voice: EventVoice;
  /** The rule that says so, where one of the unit’s does. */
  readonly rule?: string;
  /** What may be asked to have been avoided. */
  readonly avoidable?: Target | undefined;
}

const AVOIDABLE: Readonly<Record<string, Target>> = {
  'stop-required': 'stop',
  'required-stop-deeper': 'stop',
  'stop-owed': 'stop',
  'first-stop-moved': 'stop',
  'ceiling-clears': 'ceiling',
  'above-ceiling': 'ceiling',
  'slow-down': 'slow-down',
  'stop-imposed': 'slow-down',
  'limits-tightened': 'slow-down',
};

export const VOICES: Readonly<Record<LogEntry['voice'], string>> = {
  byModel: 'the model’s limit',
  byRule: 'a rule',
  bySupply: 'the gas that is left',
};

const inWords = (kind: string) => kind.replaceAll('-', ' ');

/** What the chosen unit tells and what happens to the cylinders, in order of time. */
export function logEntriesOf(scene: Scene, watch: Watch, units: UnitSystem): LogEntry[] {
  const unit = watch.events.map((event): LogEntry => ({
    timeS: sampleFromS(scene.timeline, event.timeS),
    text: eventText(event, units),
    kind: EVENT_KINDS[event.kind as keyof typeof EVENT_KINDS],
    word: inWords(event.kind),
    voice: saidBy(event),
    rule: event.rule,
    avoidable: AVOIDABLE[event.kind],
  }));
  const supply = (supplyOf(scene)?.events ?? []).map((event): LogEntry => ({
    timeS: sampleFromS(scene.timeline, event.timeS),
    text: saySupplyEvent(event, scene.timeline, units),
    kind: event.kind === 'out-of-gas' ? 'a cylinder is empty' : 'no cylinder holds the gas',
    word: inWords(event.kind),
    voice: 'bySupply',
  }));
  return [...unit, ...supply].sort((one, other) => one.timeS - other.timeS);
}
