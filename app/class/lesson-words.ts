import { useEffect, useState } from 'react';
import type { LessonAnswer, LessonAnswers, LessonAsk, LessonAsks } from '@/lib/class/lesson-ask';
import { answersPath, asksPath } from '../parts/lesson-paths';

/* What lessons ask and answer, fetched from the site itself, once each. */

const fetched = new Map<string, Promise<unknown>>();

function once<T>(path: string): Promise<T> {
  const before = fetched.get(path) as Promise<T> | undefined;
  if (before) return before;
  const asked = fetch(path).then(async (answer) => {
    if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
    return (await answer.json()) as T;
  });
  asked.catch(() => fetched.delete(path));
  fetched.set(path, asked);
  return asked;
}

export const asksOf = (lesson: string) => once<LessonAsks>(asksPath(lesson));
export const answersOfLesson = (lesson: string) => once<LessonAnswers>(answersPath(lesson));

interface Source {
  readonly lesson: string;
  readonly question: string;
}

/** The words of a question of a lesson; undefined until they are here, or where it is in none. */
export function useAskWords(source: Source | undefined): LessonAsk | undefined {
  return useFetched(source, asksOf, ({ asks }) => asks);
}

/** What is right of it and why, from the moment it is wanted. */
export function useAnswerWords(source: Source | undefined): LessonAnswer | undefined {
  return useFetched(source, answersOfLesson, ({ answers }) => answers);
}

const AGAIN_MS = 2000;

function useFetched<Whole, One extends { readonly id: string }>(
  source: Source | undefined,
  load: (lesson: string) => Promise<Whole>,
  pick: (whole: Whole) => readonly One[],
): One | undefined {
  const [found, setFound] = useState<{ readonly key: string; readonly one: One | undefined }>();
  const key = source && `${source.lesson} ${source.question}`;
  useEffect(() => {
    if (!source || found?.key === key) return undefined;
    let gone = false;
    let again: ReturnType<typeof setTimeout>;
    const look = () =>
      load(source.lesson).then(
        (whole) => !gone && setFound({ key: key!, one: pick(whole).find(({ id }) => id === source.question) }),
        // A phone whose network is away comes back for it.
        () => {
          if (!gone) again = setTimeout(() => void look(), AGAIN_MS);
        },
      );
    void look();
    return () => {
      gone = true;
      clearTimeout(again);
    };
  });
  return found?.key === key ? found?.one : undefined;
}
