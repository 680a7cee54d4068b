import { firstRemark } from '../pictures/dive-title';
import { scriptOnDesk } from '../keep/dive-on-desk';
import { readKept } from '../keep/document-kind';
import { parsedText, textAt } from '../keep/small-storage';
import { progressKind } from '../keep/lesson-progress';
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
  const progress = readKept(progressKind, parsedText(textAt(progressKind.name) ?? ''));
  for (const [slug, { seen }] of Object.entries(progress?.lessons ?? {}).reverse()) {
    const of = lessons.find((lesson) => lesson.slug === slug);
    const count = of?.steps.filter((step) => seen.includes(step)).length ?? 0;
    if (of && count > 0 && count < of.steps.length) return { of, done: count };
  }
  return undefined;
}

async function diveOnDesk(): Promise<string | undefined> {
  const script = await scriptOnDesk();
  return script === undefined ? undefined : (firstRemark(script) ?? 'A dive without a name');
}
