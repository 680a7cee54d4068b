/** Where the preferences are kept; the script below reads the same record. */
export const preferencesKey = 'halftime.preferences';

const themes = ['light', 'dark', 'system'] as const;
export type Theme = (typeof themes)[number];

/** Light, because most classrooms project. */
export const defaultTheme: Theme = 'light';

export function isTheme(value: unknown): value is Theme {
  return (themes as readonly unknown[]).includes(value);
}

/** Runs before the first paint, so that a dark room never sees a white flash. Blocked storage leaves the default. */
export const themeScript = `try{var t=JSON.parse(localStorage.getItem(${JSON.stringify(preferencesKey)})).state.theme;if(${JSON.stringify(themes)}.indexOf(t)>=0)document.documentElement.dataset.theme=t}catch(e){}`;
