import { useEffect, useState } from 'react';

/** Once typing pauses for so long what is wrong is said, ms; until then it only stands there. */
const PAUSE_MS = 800;

/**
 * How what is wrong is read out: what is new in the page as an alert is, so it becomes one when typing pauses, once, and is
 * made anew whenever `again` asks. The key and the role go on the element that holds the words.
 */
export function useSaidOncePaused(wrong: string | undefined) {
  const [said, setSaid] = useState<{ wrong: string | undefined; times: number }>({ wrong: undefined, times: 0 });
  const again = () => setSaid(({ times }) => ({ wrong, times: times + 1 }));
  useEffect(() => {
    // What a press has had said meanwhile is not said once more.
    const say = () => setSaid((said) => (said.wrong === wrong ? said : { wrong, times: said.times + 1 }));
    const pause = setTimeout(say, wrong ? PAUSE_MS : 0);
    return () => clearTimeout(pause);
  }, [wrong]);
  return { key: said.times, role: wrong !== undefined && said.wrong === wrong ? 'alert' : undefined, again } as const;
}
