/**
 * Keeps zod from trying whether it may make code from text: the pages' policy forbids it, and a browser reports the try.
 * It tries when a schema is made, so this has to run before any module does; zod reads its settings from this name.
 */
export const noEvalScript = 'globalThis.__zod_globalConfig={jitless:true};';
