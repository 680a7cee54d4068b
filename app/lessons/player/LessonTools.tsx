import type { StepKind } from '@/lib/lesson/step';
import { Button, ButtonLink } from '../../parts/Button';
import { keyPath, sheetPath, teachPath, textPath, yamlPath } from '../../parts/lesson-paths';
import type { PassedOn } from './PassStepOn';

interface LessonToolsProps {
  slug: string;
  /** Whether the lesson has pages of its own. */
  shipped: boolean;
  onPresent: () => void;
  /** What step is open, if one is. */
  kind: StepKind | undefined;
  /** Whether the lesson's text is at hand, so that a question of it can be put on a page of its own. */
  whole: boolean;
  onPass: (as: PassedOn) => void;
}

/** What else can be done with a lesson than take it. */
export function LessonTools({ slug, shipped, onPresent, kind, whole, onPass }: LessonToolsProps) {
  return (
    <>
      <Button kind="quiet" icon="screen" data-done="" onClick={onPresent}>
        Present to a class
      </Button>
      {shipped && kind && (
        <Button kind="quiet" icon="link" data-done="" onClick={() => onPass('link')}>
          Link to this step
        </Button>
      )}
      {whole && kind === 'predict' && (
        <Button kind="quiet" icon="save" data-done="" onClick={() => onPass('page')}>
          This question as a page of its own
        </Button>
      )}
      {shipped && (
        <>
          <ButtonLink kind="quiet" href={teachPath(slug)}>
            Teach it to a class with phones
          </ButtonLink>
          <ButtonLink kind="quiet" href={textPath(slug)}>
            Read it as one page
          </ButtonLink>
          <ButtonLink kind="quiet" href={sheetPath(slug)}>
            Student sheet
          </ButtonLink>
          <ButtonLink kind="quiet" href={keyPath(slug)}>
            Answer key with notes
          </ButtonLink>
          <a href={yamlPath(slug)} download={`${slug}.yaml`}>
            The lesson as a file
          </a>
        </>
      )}
    </>
  );
}
