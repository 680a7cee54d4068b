/** What a unit insists on, each with what it means. A sample holds them as bits, in this order. */
const ALARM_MEANINGS = {
  'slow-down': 'The rise has been too fast for too long.',
  'above-ceiling': 'The unit is above its ceiling while it asks for a stop.',
  'grace-over': 'It has been above the ceiling for longer than the grace time.',
} as const;

export type AlarmKind = keyof typeof ALARM_MEANINGS;
const ALARM_KINDS = Object.keys(ALARM_MEANINGS) as AlarmKind[];

const BITS = Object.fromEntries(ALARM_KINDS.map((kind, index) => [kind, 1 << index])) as Record<AlarmKind, number>;

/** The bit of an alarm among the alarms of a sample. */
export function alarmBit(kind: AlarmKind): number {
  return BITS[kind];
}

/** The alarms in a sample's bits. */
export function alarmsIn(bits: number): AlarmKind[] {
  return ALARM_KINDS.filter((kind) => (bits & alarmBit(kind)) !== 0);
}
