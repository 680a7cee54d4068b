import { parseWorkingDepth } from '@/lib/dive/working-depth';
import { sayDepth } from '@/lib/quantity/depth';
import { usePreferences } from './preferences';
import { TypedValue } from './TypedValue';

interface TypedDepthProps {
  label: string;
  depthM: number;
  onDepth: (depthM: number) => void;
  hint?: string;
}

/** A box for a depth that the model reaches, which takes effect while it is typed. */
export function TypedDepth({ label, depthM, onDepth, hint }: TypedDepthProps) {
  const units = usePreferences((state) => state.units);
  return (
    <TypedValue
      label={label}
      shown={sayDepth(depthM, units)}
      parse={parseWorkingDepth}
      live
      onValue={onDepth}
      hint={hint}
    />
  );
}
