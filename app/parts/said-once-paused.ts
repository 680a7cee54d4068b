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
    const pause = setTimeout(
      // What a press has had said in the meantime is not said once more.
      () => setSaid((said) => (said.wrong === wrong ? said : { wrong, times: said.times + 1 })),
      wrong ? PAUSE_MS : 0,
    );
    return () => clearTimeout(pause);
  }, [wrong]);
  return { key: said.times, role: wrong !== undefined && said.wrong === wrong ? 'alert' : undefined, again } as const;
}

/**
 * Leads a press that can do nothing yet to the first control with something wrong in it: focuses it, so that its name and
 * its fault are read out, and has the fault said again. Whether there was one.
 */
export function toFirstFault(within: ParentNode = document): boolean {
  const fault = within.querySelector<HTMLElement>('[aria-invalid]');
  fault?.focus();
  fault?.dispatchEvent(new Event('invalid'));
  return fault !== null;
}
