const all = '/class/live/';

/** Where a class together asks the server. All but `open` and `join` name the class: `?code=…`. */
export const classAddress = {
  all,
  /** Teacher: opens a class, or opens it again on a server that was started anew. */
  open: `${all}open`,
  /** Teacher: the line on which what phones do is told. */
  hear: `${all}hear`,
  /** Teacher: what all phones see. */
  show: `${all}show`,
  /** Teacher: where the hand stands on the dive that is followed. */
  point: `${all}point`,
  /** Teacher: forgets what was answered. */
  forget: `${all}forget`,
  /** Teacher: ends the class. */
  end: `${all}end`,
  /** Phone: comes in by the code. */
  join: `${all}join`,
  /** Phone: the line on which it is told what to show. */
  hold: `${all}hold`,
  /** Phone: its answer. */
  answer: `${all}answer`,
} as const;
