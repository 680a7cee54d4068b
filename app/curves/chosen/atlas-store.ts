import { useMemo } from 'react';
import { create } from 'zustand';
import { changed, NO_HISTORY, redone, undone, type History } from '../../keep/history';
import type { Choice, Choices } from './choice';
import { PLATES, type PlateId } from './plate-choices';

/** What is chosen on a plate, each as it is written in a link; what is as it was at first is left out. */
export type WrittenChoices = Readonly<Record<string, string>>;

/** What the atlas shows: which plate is open, and what is chosen on each. */
export interface AtlasMoment {
  readonly plate: PlateId;
  readonly chosen: Partial<Readonly<Record<PlateId, WrittenChoices>>>;
}

interface AtlasState extends AtlasMoment {
  readonly history: History<AtlasMoment>;
  readonly open: (plate: PlateId) => void;
  /** Changes in a row under one name are undone together. */
  readonly choose: (plate: PlateId, change: Readonly<Record<string, string | undefined>>, joined: string) => void;
  /** Shows what was kept or what a link says. */
  readonly show: (moment: Partial<AtlasMoment>) => void;
  readonly undo: () => void;
  readonly redo: () => void;
}

export const useAtlas = create<AtlasState>()((set, get) => {
  const step = (move: typeof undone) => () => {
    const { plate, chosen, history } = get();
    const to = move(history, { plate, chosen });
    if (to) set({ ...to.moment, history: to.history });
  };
  return {
    plate: PLATES[0].id,
    chosen: {},
    history: NO_HISTORY,
    open: (plate) => set({ plate }),
    choose(of, change, joined) {
      const { plate, chosen, history } = get();
      const written = { ...chosen[of], ...change };
      const kept = Object.fromEntries(Object.entries(written).filter(([, text]) => text !== undefined));
      set({
        chosen: { ...chosen, [of]: kept as WrittenChoices },
        history: changed(history, { plate, chosen }, `${of} ${joined}`),
      });
    },
    show: (moment) => set(moment),
    undo: step(undone),
    redo: step(redone),
  };
});

/** The value last read of a choice: what did not change stays the same object, so that nothing is worked out anew. */
const lastRead = new WeakMap<object, { readonly text: string; readonly value: unknown }>();

function valueOf<Value>(choice: Choice<Value>, text: string | undefined): Value {
  if (text === undefined) return choice.first;
  const before = lastRead.get(choice);
  if (before?.text === text) return before.value as Value;
  const read = choice.read(text);
  const value = read.ok ? read.value : choice.first;
  lastRead.set(choice, { text, value });
  return value;
}

/** All that is chosen on a plate, from how it is written. */
export function valuesOf<Values extends object>(choices: Choices<Values>, written: WrittenChoices = {}): Values {
  const names = Object.keys(choices) as (keyof Values & string)[];
  return Object.fromEntries(names.map((name) => [name, valueOf(choices[name], written[name])])) as Values;
}

/** What is chosen on a plate, and how to choose otherwise. */
export function usePlate<Values extends object>(plate: PlateId, choices: Choices<Values>) {
  const written = useAtlas((state) => state.chosen[plate]);
  const values = useMemo(() => valuesOf(choices, written), [choices, written]);
  const set = (change: Partial<Values>) => {
    const names = Object.keys(change) as (keyof Values & string)[];
    const texts = names.map((name) => {
      const { first, write } = choices[name];
      const text = write(change[name] as Values[typeof name]);
      return [name, text === write(first) ? undefined : text] as const;
    });
    useAtlas.getState().choose(plate, Object.fromEntries(texts), names.join(' '));
  };
  return [values, set] as const;
}
