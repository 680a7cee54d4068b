import * as z from 'zod';
import { answerSchema, askId, nameSchema, phoneId, type SentAnswer } from './answer';
import { MOST_ROUNDS } from './bounds';
import { askSchema, truthSchema, type Ask, type Truth } from './ask';

/*
 * A class is what its events make of it. The teacher's events come in their order; those of the phones may be lost, come
 * twice and come in any order, and the class is the same.
 *
 * The teacher's page holds it (`app/class/teach/teacher-line.ts`). The server (`app/commands/class`) passes views to phones
 * and what phones do to the teacher; every right follows from the teacher's secret, so that a server started anew knows
 * everyone again. Markup never travels: phones read the words of a lesson's question from the site.
 *
 * Another kind of question is an entry in `askSchema`, `truthSchema`, `answerSchema` and `spreadSchema`, a case in `isRight`,
 * a box in `app/class/phone/AnswerBox.tsx` and a picture in `app/class/shown/SpreadPicture.tsx`. Something else to ask of a
 * moment of a dive is an entry in `DIVE_ASKS` (`lib/class/dive-asks.ts`).
 */

/** How far a question has got. */
const PHASES = ['asking', 'closed', 'spread', 'truth'] as const;
export type Phase = (typeof PHASES)[number];

const followSchema = z.strictObject({
  mode: z.enum(['follow', 'free']),
  title: z.string().max(200),
  script: z.string().min(1).max(20_000),
  /** Readings that are covered on the desk. */
  covered: z.array(z.string().max(40)).max(30),
});
export type Follow = z.infer<typeof followSchema>;

const roundSchema = z.strictObject({
  /** The latest answer of each phone. */
  answers: z.record(phoneId, z.strictObject({ nth: z.number().int(), answer: answerSchema })),
});

/** Where a question came from, so that it can be asked again elsewhere: known to the teacher's page alone. */
const originSchema = z.discriminatedUnion('by', [
  /** A moment of a dive, asked as one of `DIVE_ASKS`. */
  z.strictObject({
    by: z.literal('dive'),
    ask: z.string().max(40),
    atS: z.number().min(0).max(1e7),
    title: z.string().max(200),
    script: z.string().min(1).max(20_000),
    /** Rules of its units, as in a lesson's script. */
    rules: z.record(z.string(), z.unknown()).optional(),
  }),
  /** A lesson that is not on the shelf, whole, and its question. */
  z.strictObject({ by: z.literal('own lesson'), question: z.string().max(90) }),
]);
export type Origin = z.infer<typeof originSchema>;

const askedSchema = z.strictObject({
  ask: askSchema,
  truth: truthSchema,
  origin: originSchema.optional(),
  phase: z.enum(PHASES),
  rounds: z.array(roundSchema).min(1).max(MOST_ROUNDS),
});
export type Asked = z.infer<typeof askedSchema>;

/** Questions of one class that are kept; the oldest gives way to another. */
export const MOST_ASKED = 60;

export const classStateSchema = z.strictObject({
  /** Everyone who has joined: a nickname or nothing. */
  phones: z.record(phoneId, nameSchema),
  /** Phones whose line stands. */
  here: z.array(phoneId),
  asked: z.array(askedSchema).max(MOST_ASKED),
  /** The question before the class, by id. */
  current: askId.optional(),
  follow: followSchema.optional(),
  ended: z.boolean(),
});
export type ClassState = z.infer<typeof classStateSchema>;

export const EMPTY_CLASS: ClassState = { phones: {}, here: [], asked: [], ended: false };

/** What phones do. */
export type PhoneEvent =
  | { readonly kind: 'joined'; readonly phone: string; readonly name: string }
  | { readonly kind: 'left'; readonly phone: string }
  | { readonly kind: 'returned'; readonly phone: string }
  | ({ readonly kind: 'answered'; readonly phone: string } & SentAnswer);

/** What the teacher does, and what the server tells of itself. */
export type TeacherEvent =
  /** The line to the server stands (again), and these are on it. */
  | { readonly kind: 'opened'; readonly here: readonly string[] }
  | { readonly kind: 'asked'; readonly ask: Ask; readonly truth: Truth; readonly origin?: Origin | undefined }
  | { readonly kind: 'closed' }
  | { readonly kind: 'spread shown' }
  | { readonly kind: 'truth shown' }
  | { readonly kind: 'asked again' }
  | { readonly kind: 'put away' }
  | { readonly kind: 'following'; readonly follow: Omit<Follow, 'mode'> }
  | { readonly kind: 'let free' }
  | { readonly kind: 'called back' }
  | { readonly kind: 'no longer following' }
  | { readonly kind: 'forgotten' }
  | { readonly kind: 'ended' };

export type ClassEvent = PhoneEvent | TeacherEvent;

/** The question before the class. */
export function currentOf({ asked, current }: ClassState): Asked | undefined {
  return asked.find(({ ask }) => ask.id === current);
}

/** A class after an event. What does not fit, such as an answer to a question never asked, changes nothing. */
export function after(state: ClassState, event: ClassEvent): ClassState {
  switch (event.kind) {
    case 'joined':
      return {
        ...state,
        phones: { ...state.phones, [event.phone]: event.name || (state.phones[event.phone] ?? '') },
        here: withOne(state.here, event.phone),
      };
    case 'returned':
      return {
        ...state,
        phones: { ...state.phones, [event.phone]: state.phones[event.phone] ?? '' },
        here: withOne(state.here, event.phone),
      };
    case 'left':
      return { ...state, here: state.here.filter((phone) => phone !== event.phone) };
    case 'answered':
      return answered(state, event);
    case 'opened':
      return { ...state, here: [...new Set(event.here)] };
    case 'asked':
      return {
        ...state,
        asked: [
          ...state.asked.filter(({ ask }) => ask.id !== event.ask.id).slice(1 - MOST_ASKED),
          { ask: event.ask, truth: event.truth, origin: event.origin, phase: 'asking', rounds: [{ answers: {} }] },
        ],
        current: event.ask.id,
      };
    case 'closed':
      return changed(state, (one) => (one.phase === 'asking' ? { ...one, phase: 'closed' } : one));
    case 'spread shown':
      return changed(state, (one) => ({ ...one, phase: 'spread' }));
    case 'truth shown':
      return changed(state, (one) => ({ ...one, phase: 'truth' }));
    case 'asked again':
      return changed(state, (one) =>
        one.phase === 'asking' || one.rounds.length === MOST_ROUNDS
          ? one
          : { ...one, phase: 'asking', rounds: [...one.rounds, { answers: {} }] },
      );
    case 'put away':
      return { ...state, current: undefined };
    case 'following':
      return { ...state, follow: { ...event.follow, mode: state.follow?.mode ?? 'follow' } };
    case 'let free':
      return state.follow ? { ...state, follow: { ...state.follow, mode: 'free' } } : state;
    case 'called back':
      return state.follow ? { ...state, follow: { ...state.follow, mode: 'follow' } } : state;
    case 'no longer following':
      return { ...state, follow: undefined };
    case 'forgotten':
      return { ...EMPTY_CLASS, here: state.here };
    case 'ended':
      return { ...state, current: undefined, follow: undefined, here: [], ended: true };
  }
}

function withOne(here: readonly string[], phone: string): string[] {
  return here.includes(phone) ? [...here] : [...here, phone];
}

function changed(state: ClassState, change: (one: Asked) => Asked): ClassState {
  return { ...state, asked: state.asked.map((one) => (one.ask.id === state.current ? change(one) : one)) };
}

/** Keeps the newest answer of a phone to a round, whichever comes first. Whether it came in time, the server has judged. */
function answered(state: ClassState, { phone, ask, round, nth, answer }: SentAnswer & { phone: string }): ClassState {
  const one = state.asked.find((asked) => asked.ask.id === ask);
  const known = one?.rounds[round];
  if (!one || !known || one.ask.by !== answer.by) return state;
  const before = known.answers[phone];
  if (before && before.nth >= nth) return state;
  const rounds = one.rounds.map((each, i) =>
    i === round ? { answers: { ...each.answers, [phone]: { nth, answer } } } : each,
  );
  return { ...state, asked: state.asked.map((asked) => (asked === one ? { ...one, rounds } : asked)) };
}
