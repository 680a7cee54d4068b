/** Why a number of a working is not for changing, worded once. */
export const FIXED = {
  atSurface: 'It is the surface: no step says that depth.',
  airAtSurface: 'Between dives you breathe air.',
  followed: 'It came of the dive: change a depth, a time or a gas that led to it.',
  place: 'The place sets it: change the altitude or the water in the script.',
  planned: 'The way up is planned from the rest: it would be planned anew.',
  found: 'It is what is found, not what it is found from.',
  constant: 'It is a constant.',
  drawnIn: 'A rule has drawn it in: ask why the limits are drawn in.',
  otherCompartment: 'It belongs to another compartment than the one asked about.',
  earlierLegs: 'Earlier legs, which are not worked through here, hang on it too.',
} as const;
