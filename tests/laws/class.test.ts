import fc from 'fast-check';
import { expect, it } from 'vitest';
import { after, EMPTY_CLASS, type ClassEvent, type ClassState, type PhoneEvent } from '@/lib/class/class-state';
import { answersOf, spreadOf } from '@/lib/class/spread';
import { shuffled, seeded } from '@/lib/quantity/seeded';
import { choiceAsk, choiceTruth, drawAsk, drawTruth, numberAsk, numberTruth } from '../unit/class/asks';
import { law } from './law';

const asked = [
  { ask: choiceAsk, truth: choiceTruth },
  { ask: numberAsk, truth: numberTruth },
  { ask: drawAsk, truth: drawTruth },
] as const;

const answer = (by: 'choice' | 'number' | 'draw', chance: number) =>
  by === 'choice'
    ? { by, option: Math.floor(chance * 3) }
    : by === 'number'
      ? { by, value: Math.round(chance * 400) / 10 }
      : {
          by,
          sketch: [
            { timeS: 0, value: chance * 60 },
            { timeS: 600, value: (1 - chance) * 60 },
          ],
        };

/** What a few phones do: each counts its own answers, and changes its mind. */
const doings = fc
  .array(
    fc.record({
      phone: fc.constantFrom('phone-001', 'phone-002', 'phone-003', 'phone-004'),
      asked: fc.nat({ max: 2 }),
      round: fc.nat({ max: 1 }),
      chance: fc.double({ min: 0, max: 0.999, noNaN: true }),
    }),
    { minLength: 1, maxLength: 30 },
  )
  .map((drawn) =>
    drawn.map(({ phone, asked: which, round, chance }, i): PhoneEvent & { kind: 'answered' } => {
      const { ask } = asked[which]!;
      return { kind: 'answered', phone, ask: ask.id, round, nth: i + 1, answer: answer(ask.by, chance) };
    }),
  );

/** A class in which all questions have been asked, twice. */
function open(): ClassState {
  return asked.reduce<ClassState>(
    (state, one) =>
      ([{ kind: 'asked', ...one }, { kind: 'closed' }, { kind: 'asked again' }] as ClassEvent[]).reduce(after, state),
    EMPTY_CLASS,
  );
}

const spreads = (state: ClassState) =>
  state.asked.map((one) => one.rounds.map((_, round) => spreadOf(one.ask, answersOf(one, round))));

it('any order of joins, answers, losses and returns gives the same spread', () => {
  law(
    fc.property(doings, fc.integer(), fc.integer({ min: 0, max: 29 }), (given, seed, lost) => {
      const inOrder = given.reduce<ClassState>(after, open());
      // What a line lost comes again, all of it and more than once, between comings and goings.
      const chance = seeded(seed);
      const repeated = shuffled(
        [
          ...given,
          ...given.slice(0, lost),
          ...given.flatMap(({ phone }): PhoneEvent[] => [
            { kind: 'left', phone },
            { kind: 'returned', phone },
            { kind: 'joined', phone, name: '' },
          ]),
        ],
        chance,
      );
      expect(spreads(repeated.reduce<ClassState>(after, open()))).toEqual(spreads(inOrder));
    }),
  );
});

it('the spread counts each phone once, by its newest answer', () => {
  law(
    fc.property(doings, (given) => {
      const state = given.reduce<ClassState>(after, open());
      for (const one of state.asked)
        one.rounds.forEach((_, round) => {
          const newest = new Map(
            given
              .filter(({ ask, round: its }) => ask === one.ask.id && its === round)
              .map((each) => [each.phone, each]),
          );
          expect(spreadOf(one.ask, answersOf(one, round))).toEqual(
            spreadOf(
              one.ask,
              [...newest.values()].map((each) => each.answer),
            ),
          );
        });
    }),
  );
});
