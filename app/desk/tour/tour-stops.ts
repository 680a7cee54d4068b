export interface TourStop {
  readonly title: string;
  readonly text: string;
  /** Finds the part that is shown. */
  readonly part: string;
  /** Said in place of the ring where the part is not on the desk. */
  readonly missing: string;
}

/** Once round the desk, in the order a dive is made and read. */
export const TOUR_STOPS: readonly TourStop[] = [
  {
    title: 'A dive is a few lines of text',
    text: 'Each line says one thing the diver does. Change a number and everything beside it follows as you type. Dives to begin with are in the list above it, and Undo takes back whatever you did.',
    part: '[data-tour="script"]',
    missing: 'The script is not on show just now.',
  },
  {
    title: 'The dive, drawn',
    text: 'Time runs to the right, depth downward. Drag a point, or choose one with Tab and move it with the arrow keys: the script is rewritten to match. A hatched roof is the ceiling the model sets.',
    part: 'figure:has(> [data-picture="profile"])',
    missing: 'Tick “The dive” under “Choose pictures” to see it.',
  },
  {
    title: 'What it comes to, at one moment',
    text: 'The readings belong to the time the cursor stands at. Cover one before a class and let them say what it will be.',
    part: '[data-tour="readings"]',
    missing: 'The readings are not on show just now.',
  },
  {
    title: 'Why that number?',
    text: 'Every reading with this mark tells how it came about: the formula, the numbers put in, the result and the source. You may change a number there and see what it would do.',
    part: '[data-tour="readings"] button[aria-label^="Why"]',
    missing: 'Uncover a reading to see the mark beside its name.',
  },
  {
    title: 'Let time run',
    text: 'Play the dive, pull the cursor, or go from event to event. “Steer by hand” puts the diver on a lever. When a class is watching, “Present” at the top fills the screen with what you choose.',
    part: '[data-tour="time"]',
    missing: 'A dive is being steered. End it, and the time controls are back.',
  },
];
