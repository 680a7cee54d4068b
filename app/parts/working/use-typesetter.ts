import { useEffect, useState } from 'react';
import { loadTypesetter, type Typesetter } from '@/lib/working/formula';

/** What sets formulas, once it is loaded; `failed` where that did not come about, and a way to try again. */
export function useTypesetter(): { typesetter: Typesetter | undefined; failed: boolean; tryAgain: () => void } {
  const [typesetter, setTypesetter] = useState<Typesetter>();
  const [failed, setFailed] = useState(false);
  const [attempt, setAttempt] = useState(0);
  useEffect(() => {
    let wanted = true;
    loadTypesetter().then(
      (loaded) => wanted && setTypesetter(loaded),
      () => wanted && setFailed(true),
    );
    return () => {
      wanted = false;
    };
  }, [attempt]);
  const tryAgain = () => {
    setFailed(false);
    setAttempt(attempt + 1);
  };
  return { typesetter, failed, tryAgain };
}
