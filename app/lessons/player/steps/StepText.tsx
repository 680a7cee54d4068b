import { Disclosure } from '../../../parts/Disclosure';
import type { PreparedStep } from '../../prepared';
import { Prose } from '../../../parts/prose/Prose';

/** The words of a step: what is needed at the moment, and the rest folded away. */
export function StepText({ step: { html, more } }: { step: PreparedStep }) {
  return (
    <>
      <Prose html={html} />
      {more && (
        <Disclosure summary="More">
          <Prose html={more} />
        </Disclosure>
      )}
    </>
  );
}
