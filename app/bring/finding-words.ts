import type { FindingKind } from '@/lib/files/records/check-record';
import { mendable } from './bring-store';
import type { FileBrought } from './brought';

export const KIND_WORDS: Readonly<Record<FindingKind, string>> = {
  unreadable: 'Cells that cannot be read',
  restart: 'Time beginning again',
  backwards: 'Time going backwards',
  repeat: 'Repeated times',
  negative: 'Negative depths',
  tooDeep: 'Depths beyond anything',
  jump: 'Leaps nobody can make',
  spike: 'Spikes of the sensor',
  gap: 'Gaps',
  start: 'A descent that is missing',
  end: 'An ascent that is missing',
  gas: 'Gases not understood',
};

/** What a look over a dive found, in a few words: `nothing`, `gaps: 2, spikes of the sensor: 1`. */
export function sayFound(counts: Partial<Readonly<Record<FindingKind, number>>>): string {
  const found = (Object.entries(counts) as [FindingKind, number][]).filter(([, count]) => count > 0);
  if (found.length === 0) return 'nothing';
  return found.map(([kind, count]) => `${KIND_WORDS[kind].toLowerCase()}: ${count}`).join(', ');
}

/** The number each kind of fault goes by, on the record as in the list: first what can be mended, in the order it is offered. */
export function faultNumbers(brought: FileBrought, chosen: readonly number[]): ReadonlyMap<FindingKind, number> {
  const found = chosen.flatMap((place) => brought.dives[place]!.findings);
  const kinds = new Set([...mendable(brought, chosen), ...found].map(({ kind }) => kind));
  return new Map([...kinds].map((kind, index) => [kind, index + 1]));
}
