import { create } from 'zustand';
import { createJSONStorage, persist } from 'zustand/middleware';
import { UNIT_SYSTEMS, type UnitSystem } from '@/lib/quantity/unit-system';
import { safeStorage } from './safe-storage';
import { defaultTheme, isTheme, preferencesKey, type Theme } from './theme';

export interface Preferences {
  units: UnitSystem;
  theme: Theme;
  setUnits: (units: UnitSystem) => void;
  setTheme: (theme: Theme) => void;
}

const isUnitSystem = (value: unknown): value is UnitSystem => (UNIT_SYSTEMS as readonly unknown[]).includes(value);

/** Choices that hold on every screen and are remembered on this machine. A record it can't read is ignored, field by field. */
export const usePreferences = create<Preferences>()(
  persist(
    (set) => ({
      units: 'metric',
      theme: defaultTheme,
      setUnits: (units) => set({ units }),
      setTheme: (theme) => {
        document.documentElement.dataset['theme'] = theme;
        set({ theme });
      },
    }),
    {
      name: preferencesKey,
      version: 1,
      storage: createJSONStorage(() => safeStorage),
      partialize: ({ units, theme }) => ({ units, theme }),
      migrate: (stored) => stored as Pick<Preferences, 'units' | 'theme'>,
      merge: (stored, current) => {
        const { units, theme } = (stored ?? {}) as { units?: unknown; theme?: unknown };
        return {
          ...current,
          ...(isUnitSystem(units) && { units }),
          ...(isTheme(theme) && { theme }),
        };
      },
    },
  ),
);
