/** Something the person must change; told in one line on standard error. */
export class BadInput extends Error {}
