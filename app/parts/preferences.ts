import { create } from 'zustand';
import { createJSONStorage, persist } from 'zustand/middleware';
import { UNIT_SYSTEMS, type UnitSystem } from '@/lib/quantity/unit-system';
import { safeStorage } from './safe-storage';
import { defaultTheme, isTheme, preferencesKey, type Theme } from './theme';

const tourStandings = ['offered', 'settled'] as const;
/** Whether the tour of the desk is still offered, or was taken or refused. */
export type TourStanding = (typeof tourStandings)[number];

/** Where playing may wait whenever something happens: at work on the desk, and before a class. */
type HoldPlace = 'desk' | 'class';

export interface Preferences {
  units: UnitSystem;
  theme: Theme;
  tour: TourStanding;
  holds: Readonly<Record<HoldPlace, boolean>>;
  setUnits: (units: UnitSystem) => void;
  setTheme: (theme: Theme) => void;
  setTour: (tour: TourStanding) => void;
  setHolds: (place: HoldPlace, holds: boolean) => void;
}

const isUnitSystem = (value: unknown): value is UnitSystem => (UNIT_SYSTEMS as readonly unknown[]).includes(value);
const isTourStanding = (value: unknown): value is TourStanding => (tourStandings as readonly unknown[]).includes(value);

function holdsFrom(stored: unknown, usual: Preferences['holds']): Preferences['holds'] {
  const read = typeof stored === 'object' && stored !== null ? (stored as Record<string, unknown>) : {};
  const of = (place: HoldPlace) => (typeof read[place] === 'boolean' ? read[place] : usual[place]);
  return { desk: of('desk'), class: of('class') };
}

/** Choices that hold on every screen and are remembered on this machine. A record it can't read is ignored, field by field. */
export const usePreferences = create<Preferences>()(
  persist(
    (set) => ({
      units: 'metric',
      theme: defaultTheme,
      tour: 'offered',
      holds: { desk: false, class: true },
      setUnits: (units) => set({ units }),
      setTheme: (theme) => {
        document.documentElement.dataset['theme'] = theme;
        set({ theme });
      },
      setTour: (tour) => set({ tour }),
      setHolds: (place, holds) => set(({ holds: before }) => ({ holds: { ...before, [place]: holds } })),
    }),
    {
      name: preferencesKey,
      version: 1,
      storage: createJSONStorage(() => safeStorage),
      partialize: ({ units, theme, tour, holds }) => ({ units, theme, tour, holds }),
      migrate: (stored) => stored as Pick<Preferences, 'units' | 'theme' | 'tour' | 'holds'>,
      merge: (stored, current) => {
        const { units, theme, tour, holds } = (stored ?? {}) as Partial<Record<keyof Preferences, unknown>>;
        return {
          ...current,
          ...(isUnitSystem(units) && { units }),
          ...(isTheme(theme) && { theme }),
          ...(isTourStanding(tour) && { tour }),
          holds: holdsFrom(holds, current.holds),
        };
      },
    },
  ),
);

/** Takes over what is chosen in another window, so that none writes over it what was chosen before; ends when the function returned is called. */
export function followOtherWindows(): () => void {
  const heard = async ({ key }: StorageEvent) => {
    if (key !== preferencesKey) return;
    await usePreferences.persist.rehydrate();
    document.documentElement.dataset['theme'] = usePreferences.getState().theme;
  };
  window.addEventListener('storage', heard);
  return () => window.removeEventListener('storage', heard);
}
