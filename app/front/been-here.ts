import { firstRemark } from '../pictures/dive-title';
import { openShelf } from '../keep/open-shelf';
import { DESK } from '../keep/shelf';
import { progressKey, progressOfStored } from '../lessons/player/progress-key';
import { safeStorage } from '../parts/safe-storage';
import type { ShelvedLesson } from './WhereYouWere';

export interface BeenHere {
  /** The lesson last begun of those that are not done. */
  readonly lesson: { readonly of: ShelvedLesson; readonly done: number } | undefined;
  /** What the dive that was last on the desk is called. */
  readonly dive: string | undefined;
}

/** What an earlier visit left on this machine that one can go on with. Never rejects. */
export async function beenHere(lessons: readonly ShelvedLesson[]): Promise<BeenHere> {
  return { lesson: lessonUnderWay(lessons), dive: await diveOnDesk().catch(() => undefined) };
}

function lessonUnderWay(lessons: readonly ShelvedLesson[]): BeenHere['lesson'] {
  for (const [slug, { done }] of Object.entries(keptProgress()?.lessons ?? {}).reverse()) {
    const of = lessons.find((lesson) => lesson.slug === slug);
    const count = of?.steps.filter((step) => done.includes(step)).length ?? 0;
    if (of && count > 0 && count < of.steps.length) return { of, done: count };
  }
  return undefined;
}

function keptProgress() {
  try {
    return progressOfStored(JSON.parse((safeStorage.getItem(progressKey) as string | null) ?? 'null'));
  } catch {
    return undefined;
  }
}

async function diveOnDesk(): Promise<string | undefined> {
  const record = await (await openShelf()).read(DESK);
  const script = typeof record === 'object' && record !== null && 'script' in record ? record.script : undefined;
  return typeof script === 'string' ? (firstRemark(script) ?? 'A dive without a name') : undefined;
}
