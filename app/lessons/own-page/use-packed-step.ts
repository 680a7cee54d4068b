import { useEffect, useState } from 'react';
import { refused, type Parsed } from '@/lib/quantity/parsed';
import type { Asked } from '../workshop/editor/answer-to';
import { askWorker } from '../workshop/faults/ask-worker';
import type { PackedStep } from './pack-step';

const FAULTY = refused('The lesson has faults.', 'Mend them in the workshop first.');

/** A question packed for a page of its own, once what is asked is whole; undefined until it is made. */
export function usePackedStep(asked: Asked | undefined): Parsed<PackedStep> | undefined {
  const [made, setMade] = useState<{ readonly asked: Asked; readonly as: Parsed<PackedStep> }>();
  useEffect(() => {
    if (!asked) return undefined;
    return askWorker(
      asked,
      (packed) => setMade({ asked, as: (packed as Parsed<PackedStep> | undefined) ?? FAULTY }),
      ({ what, mend }) => setMade({ asked, as: refused(what, mend) }),
    );
  }, [asked]);
  return asked && made?.asked === asked ? made.as : undefined;
}
