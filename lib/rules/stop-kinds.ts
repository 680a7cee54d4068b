/**
 * Three kinds of stop that are never to be taken for one another. Each has its own words, its own mark (a shape, so that
 * it doesn't rest on colour) and its own explanation, and every screen, print and sentence takes them from here.
 */
export const STOP_KINDS = {
  safety: {
    word: 'safety stop',
    /** What it is, in one word: advice may be left, a limit may not. */
    standing: 'advice',
    mark: 'open ring',
    explanation: 'Advised on every deeper dive, whatever the tissues hold. Leave it out and nothing is owed.',
  },
  required: {
    word: 'required stop',
    standing: 'limit',
    mark: 'solid bar',
    explanation:
      'The model’s ceiling: above it a compartment holds more gas than the chosen limits let pass. It has to be made.',
  },
  imposed: {
    word: 'imposed stop',
    standing: 'rule',
    mark: 'hatched bar',
    explanation:
      'The unit’s own demand after a fast rise. It has to be made on this unit, though the model may ask for nothing.',
  },
} as const;

export type StopKind = keyof typeof STOP_KINDS;
