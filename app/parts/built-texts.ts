/** Where texts wait from being drawn to being put into their page: those two happen in one process, in separate copies of the modules. */
const shared = globalThis as { halftimeBuiltTexts?: Map<string, string> };

/** Texts drawn at build time, as HTML, by the name of the place that each belongs in. */
export function builtTexts(): Map<string, string> {
  return (shared.halftimeBuiltTexts ??= new Map());
}
