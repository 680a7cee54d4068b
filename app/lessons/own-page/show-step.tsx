import { isStepLink } from '@/lib/files/links/step-mark';
import { openStep } from './opened-step';
import { StepAlone } from './StepAlone';

/** The question of a lesson that a page of its own carries; undefined where it carries something else. */
export function showStep(packed: string, inFile: boolean) {
  return isStepLink(packed) ? (
    <StepAlone key={packed} opened={openStep(packed, inFile ? undefined : location.origin)} inFile={inFile} />
  ) : undefined;
}
