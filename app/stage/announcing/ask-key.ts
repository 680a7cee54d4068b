/** The key that asks where the diver is; not a letter, so that it takes nothing from whoever types or speaks. */
export const ASK_KEY = 'F2';
