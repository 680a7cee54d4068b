import { memo } from 'react';
import type { Compartments } from '@/lib/tissue/coefficients';
import { atMost } from '@/lib/quantity/number';
import { Choice } from '../../parts/Choice';
import { leadingCompartment } from '../../pictures/leading';
import type { Scene } from '../../pictures/scene';
import { useDesk } from '../desk-context';

/** The compartment (1–16) looked at: the one chosen in any picture, else whichever leads. */
export function useCompartment(scene: Scene, sample: number): number {
  return useDesk((state) => state.compartment) ?? leadingCompartment(scene, sample);
}

interface CompartmentChoiceProps {
  compartments: Compartments;
  /** Tells the half-time of helium, too. */
  helium?: boolean;
  /** Where all of them can be looked at together: whether they are. */
  all?: boolean;
  onAll?: (all: boolean) => void;
}

/** Which compartment is looked at: one choice for every picture that looks at one. Stays while the dive changes. */
export const CompartmentChoice = memo(function CompartmentChoice(props: CompartmentChoiceProps) {
  const { compartments, helium = false, all, onAll } = props;
  const chosen = useDesk((state) => state.compartment);
  const choose = useDesk((state) => state.chooseCompartment);
  return (
    <Choice
      label="Compartment"
      value={all ? 'all' : `${chosen ?? 'leading'}`}
      onChange={(value) => {
        onAll?.(value === 'all');
        if (value !== 'all') choose(Number(value) || undefined);
      }}
      options={[
        { value: 'leading', label: 'Whichever leads' },
        ...(onAll ? [{ value: 'all', label: 'All sixteen' }] : []),
        ...Array.from(compartments.nitrogenHalfTimeMin, (minutes, c) => ({
          value: `${c + 1}`,
          label: `${c + 1}, ${atMost(minutes, 2)} min${helium ? `, helium ${atMost(compartments.heliumHalfTimeMin[c]!, 2)} min` : ''}`,
        })),
      ]}
    />
  );
});
