import type { Because } from '@/lib/class/reasons';
import { inUnits } from '@/lib/class/words';
import { usePreferences } from '../../parts/preferences';
import { ProseLine } from '../../parts/prose/Prose';

/** Why an answer is wrong, in the reader's units. Plain words stay plain. */
export function BecauseLine({ because }: { because: Because }) {
  const units = usePreferences((state) => state.units);
  return 'html' in because ? <ProseLine html={because.html} /> : <>{inUnits(because.words, units)}</>;
}
