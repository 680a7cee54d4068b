import type { AskOf, TruthOf } from '@/lib/class/ask';

/* Invented questions for a class. */

export const choiceAsk: AskOf<'choice'> = {
  id: 'a1',
  title: 'Which is right?',
  by: 'choice',
  options: ['one', 'two', 'three'],
};
export const choiceTruth: TruthOf<'choice'> = { by: 'choice', right: 1 };
export const numberAsk: AskOf<'number'> = { id: 'a2', title: 'How long?', by: 'number', dimension: 'time' };
export const numberTruth: TruthOf<'number'> = {
  by: 'number',
  value: 11,
  within: 2,
  printed: { metric: '11 min', imperial: '11 min' },
};
export const drawAsk: AskOf<'draw'> = {
  id: 'a3',
  title: 'Draw it',
  by: 'draw',
  axes: { fromS: 0, toS: 600, dimension: 'time', upTo: 60, noun: 'the no-stop time', zeroS: 0, boxesS: [0, 600] },
};
export const drawTruth: TruthOf<'draw'> = {
  by: 'draw',
  curve: [
    { timeS: 0, value: 60 },
    { timeS: 600, value: 0 },
  ],
  within: 3,
};
