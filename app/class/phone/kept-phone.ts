import type { ClassAnswer, SentAnswer } from '@/lib/class/answer';
import { safeStorage } from '../../parts/safe-storage';

/** What a phone keeps of the class it is in, on itself and nowhere else, until the class is over or left. */
export interface KeptPhone {
  readonly code: string;
  readonly phone: string;
  readonly token: string;
  readonly name: string;
  /** How many answers it has given, and the latest to each question and round. */
  readonly nth: number;
  readonly answers: Readonly<Record<string, SentAnswer>>;
}

const NAME = 'halftime.class.phone';

/** The class this phone is in; undefined where it is in none, or what is kept can't be read. */
export function keptPhone(): KeptPhone | undefined {
  try {
    const read = JSON.parse(String(safeStorage.getItem(NAME))) as Partial<KeptPhone> | null;
    if (!read || typeof read.code !== 'string' || typeof read.phone !== 'string' || typeof read.token !== 'string')
      return undefined;
    const { code, phone, token, name, nth, answers } = read;
    return {
      code,
      phone,
      token,
      name: typeof name === 'string' ? name : '',
      nth: Number.isInteger(nth) ? nth! : 0,
      answers: typeof answers === 'object' && answers !== null ? answers : {},
    };
  } catch {
    return undefined;
  }
}

export function keepPhone(phone: KeptPhone | undefined): void {
  if (phone) safeStorage.setItem(NAME, JSON.stringify(phone));
  else safeStorage.removeItem(NAME);
}

export const answerKey = (ask: string, round: number) => `${ask} ${round}`;

/** The phone with one answer more. Answers to other questions are with the teacher by now. */
export function withAnswer(kept: KeptPhone, ask: string, round: number, answer: ClassAnswer): KeptPhone {
  const nth = kept.nth + 1;
  const mine = Object.entries(kept.answers).filter(([key]) => key.startsWith(`${ask} `));
  return {
    ...kept,
    nth,
    answers: { ...Object.fromEntries(mine), [answerKey(ask, round)]: { ask, round, nth, answer } },
  };
}
