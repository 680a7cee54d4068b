import { create } from 'zustand';
import { classAddress } from '@/lib/class/address';
import { readCode } from '@/lib/class/code';
import type { ClassAnswer } from '@/lib/class/answer';
import type { ClassView } from '@/lib/class/view';
import { lastingLine } from '../lasting-line';
import { answerKey, keepPhone, keptPhone, withAnswer, type KeptPhone } from './kept-phone';

type Standing =
  /** In no class. */
  | 'out'
  /** The line stands. */
  | 'in'
  /** The line is cut and comes back by itself. */
  | 'waiting'
  /** The server is there, and has no such class: it is over, or the teacher's page has not brought it back yet. */
  | 'missing'
  /** The teacher has ended the class. */
  | 'over';

/** What became of the answer given last. */
export type AnswerState = 'none' | 'sending' | 'taken' | 'refused';

interface PhoneState {
  readonly standing: Standing;
  readonly kept: KeptPhone | undefined;
  readonly view: ClassView | undefined;
  /** Where the teacher's hand stands on the dive that is followed, s. */
  readonly atS: number;
  readonly answerState: AnswerState;
  /** What was refused, in words. */
  readonly told: string | undefined;
}

/** The class a phone is in. */
export const usePhone = create<PhoneState>()(() => ({
  standing: 'out',
  kept: undefined,
  view: undefined,
  atS: 0,
  answerState: 'none',
  told: undefined,
}));

const { setState: set, getState: get } = usePhone;

let letGo: (() => void) | undefined;

function proof({ phone, token }: KeptPhone): string {
  return `Phone ${phone}.${token}`;
}

/** The code in the address that was photographed. */
export function codeInAddress(): string | undefined {
  try {
    return readCode(decodeURIComponent(location.hash.slice(1)));
  } catch {
    return undefined;
  }
}

/** Takes up the class this phone was in before, if any, and if the address names no other. */
export function resume(): void {
  const kept = keptPhone();
  if (!kept || letGo || (codeInAddress() ?? kept.code) !== kept.code) return;
  set({ kept, standing: 'waiting' });
  hold();
}

/** Joins a class; returns why it can't be, in words. */
export async function join(code: string, name: string): Promise<string | undefined> {
  const before = keptPhone();
  const answer = await fetch(classAddress.join, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...(before?.code === code && { authorization: proof(before) }) },
    body: JSON.stringify({ code, name }),
  }).catch(() => undefined);
  if (!answer) return 'The teacher’s computer could not be reached. Are you in the same network? Then try again.';
  const told = ((await answer.json().catch(() => null)) ?? {}) as { phone?: string; token?: string; refused?: string };
  if (!answer.ok || !told.phone || !told.token)
    return (
      told.refused ??
      'There is no class at this address: open the address on the wall, which the teacher’s computer serves.'
    );
  const same = before?.code === code && before.phone === told.phone ? before : undefined;
  const kept: KeptPhone = { nth: 0, answers: {}, ...same, code, phone: told.phone, token: told.token, name };
  keepPhone(kept);
  set({ kept, standing: 'waiting', told: undefined, view: undefined });
  hold();
  return undefined;
}

/** Leaves the class; its answers stay with the teacher. */
export function leave(standing: 'out' | 'over' = 'out'): void {
  letGo?.();
  letGo = undefined;
  keepPhone(undefined);
  set({ standing, kept: undefined, view: undefined, answerState: 'none', told: undefined });
}

function hold(): void {
  letGo?.();
  letGo = lastingLine({
    ask: (signal) =>
      fetch(`${classAddress.hold}?code=${get().kept!.code}`, {
        headers: { authorization: proof(get().kept!) },
        cache: 'no-store',
        signal,
      }),
    onOpen: () => set({ standing: 'in' }),
    onEnd: (end) => set({ standing: end === 'missing' ? 'missing' : 'waiting' }),
    onEvent(event, data) {
      if (event === 'view') show(data as ClassView);
      else if (event === 'at') set({ atS: (data as { atS: number }).atS });
      else if (event === 'over') leave('over');
    },
  });
}

function show(view: ClassView): void {
  const before = get().view?.question;
  const now = view.question;
  const same = before?.ask.id === now?.ask.id && before?.round === now?.round;
  set({ view, ...(!same && { answerState: 'none', told: undefined }) });
  // A server that was started anew has not heard it, nor has one that was away; one that has takes it once.
  const isWanted = now?.phase === 'asking' || (now?.phase === 'closed' && get().answerState !== 'taken');
  if (isWanted && mine(view)) void send();
}

/** What this phone has said to the question before the class. */
export function mine(view: ClassView | undefined, kept = get().kept): ClassAnswer | undefined {
  const question = view?.question;
  return question && kept?.answers[answerKey(question.ask.id, question.round)]?.answer;
}

/** Gives an answer, or another in its place, until the question is closed. */
export function answer(given: ClassAnswer): void {
  const { kept, view } = get();
  const question = view?.question;
  if (!kept || question?.phase !== 'asking') return;
  const now = withAnswer(kept, question.ask.id, question.round, given);
  keepPhone(now);
  set({ kept: now, answerState: 'sending', told: undefined });
  clearTimeout(soon);
  // A finger that draws gives many answers: the one it rests on is sent.
  soon = setTimeout(() => void send(), given.by === 'choice' || given.by === 'leader' ? 0 : 350);
}

let soon: ReturnType<typeof setTimeout> | undefined;

async function send(): Promise<void> {
  const { kept, view } = get();
  const question = view?.question;
  if (!kept || !question) return;
  const sent = kept.answers[answerKey(question.ask.id, question.round)];
  if (!sent) return;
  set({ answerState: 'sending' });
  const answered = await fetch(`${classAddress.answer}?code=${kept.code}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', authorization: proof(kept) },
    body: JSON.stringify(sent),
  }).catch(() => undefined);
  const latest = get().kept?.answers[answerKey(sent.ask, sent.round)];
  if (latest?.nth !== sent.nth) return;
  if (answered?.ok) set({ answerState: 'taken' });
  else if (answered?.status === 429) {
    clearTimeout(soon);
    soon = setTimeout(() => void send(), 3000);
  } else if (answered?.status === 409) {
    const { refused } = (await answered.json().catch(() => ({}))) as { refused?: string };
    set({ answerState: 'refused', told: refused });
  }
  // Otherwise the line is cut, and it is sent once it is back.
}
