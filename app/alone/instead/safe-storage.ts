/** In place of the site's: a dive on a page of its own keeps nothing on the machine it is opened on. */
const nothing = {
  getItem: () => null,
  setItem: () => undefined,
  removeItem: () => undefined,
};

export const safeStorage = nothing;
export const safeSession = nothing;
