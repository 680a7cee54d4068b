import { create } from 'zustand';
import type { Sketch } from '@/lib/lesson/questions/sketch';

/** What a class has called out at one question: numbers, hands for each option, a curve drawn for it. */
export interface ClassAnswers {
  readonly called: readonly number[];
  readonly hands: Readonly<Record<number, number>>;
  readonly sketch: Sketch;
}

const NONE: ClassAnswers = { called: [], hands: {}, sketch: [] };

interface AnswersStore {
  readonly answers: Readonly<Record<string, ClassAnswers>>;
  readonly set: (key: string, change: Partial<ClassAnswers>) => void;
}

/** Kept while the page is open, so that turning a page loses none of it. */
const useStore = create<AnswersStore>()((set) => ({
  answers: {},
  set: (key, change) =>
    set(({ answers }) => ({ answers: { ...answers, [key]: { ...(answers[key] ?? NONE), ...change } } })),
}));

/** The answers of the class to a question, and how to change them. */
export function useClassAnswers(key: string): ClassAnswers & { change: (change: Partial<ClassAnswers>) => void } {
  const own = useStore((state) => state.answers[key]) ?? NONE;
  const set = useStore((state) => state.set);
  return { ...own, change: (change) => set(key, change) };
}
