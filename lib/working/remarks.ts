/** What workings say of themselves, worded once. */
export const REMARKS = {
  earlierLegs:
    'Only the latest legs of the dive are worked through. The tension that earlier ones left is taken as it stood.',
  search:
    'With helium the limit moves as the mixture in the compartment changes, so no formula gives the time. It is found by trying times until both sides meet.',
  stopSearch:
    'The compartment goes on changing while you climb, so the wait is found by trying times until the climb to the next level is tolerated.',
  fillsUp:
    'At once, this compartment would tolerate the climb. It takes up gas at the stop while you wait for another one, and then has to be waited for itself.',
  nothingCounts: 'Legs with half an atmosphere of oxygen or less add nothing and are left out.',
  earlierOxygen: 'Only the latest legs of the dive are worked through. What earlier ones added is taken as it stood.',
  beyondTable: 'Beyond the last row this table says nothing: the figure is a guess.',
  stopJumps:
    'What decides here is not this margin alone: the ceiling is below you already, or the line from low to high moves on the way up. The margin shown does not pass through nothing, and no search is made anew.',
  rule: 'This is a rule’s doing, not the model’s. Makers’ rules differ; its numbers are settings.',
  earlierStretches: 'Only the latest stretches are worked through. What was left before them is taken as it stood.',
  held: 'A level once reached is held until the speed is clearly below it, so the level shown may be one higher than the speed alone would have it.',
  tightened: 'A rule has drawn this unit’s limits in after a fast rise. It goes by the lower gradient factor.',
  noWait: 'No wait is a guarantee. The model knows nothing of bubbles, nor of how you are.',
  whatIf: 'What would follow from the number you changed. The dive is as it was.',
  whatIfDive:
    'The dive worked out anew with this number in its script, at the same moment of the same step. The dive itself is as it was.',
  noAnswer: 'With this number the formula has no answer.',
} as const;
