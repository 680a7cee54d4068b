/** Facts by the name of what shows them. */
export type Tells = Readonly<Record<string, readonly string[]>>;

/** Names that a lesson may use and that are kept elsewhere: by the screens, the cautions and the glossary. */
export interface KnownNames {
  readonly pictures: readonly string[];
  readonly readings: readonly string[];
  /** The facts that a picture, a reading or the working behind one tells whoever looks, by its name. */
  readonly tells: Tells;
  readonly cautions: readonly string[];
  /** Terms of the glossary, by id. */
  readonly terms: readonly string[];
  /** Screens a text may link to, by name. */
  readonly pages: readonly string[];
}
