/** What workings say of themselves, worded once. */
export const REMARKS = {
  earlierLegs: 'Only the latest legs of the dive are worked through. The tension that earlier ones left is taken as it stood.',
  search: 'With helium the limit moves as the mixture in the compartment changes, so no formula gives the time. It is found by trying times until both sides meet.',
  stopSearch: 'The compartment goes on changing while you climb, so the wait is found by trying times until the climb to the next level is tolerated.',
  fillsUp: 'At once, this compartment would tolerate the climb. It takes up gas at the stop while you wait for another one, and then has to be waited for itself.',
  oneCompartment: 'A number you change is followed for this compartment alone. With it, another compartment might set the reading.',
  noPlan: 'A number you change here alters the sum alone. The stops are not planned again.',
  whatIf: 'What would follow from the number you changed. The dive is as it was.',
  noAnswer: 'With this number the formula has no answer.',
} as const;
