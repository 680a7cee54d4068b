import { Button, ButtonLink } from '../../parts/Button';
import { keyPath, sheetPath, teachPath, textPath, yamlPath } from '../../parts/lesson-paths';

interface LessonToolsProps {
  slug: string;
  /** Whether the lesson has pages of its own. */
  shipped: boolean;
  onPresent: () => void;
  /** Left out where no step is open. */
  onLink: (() => void) | undefined;
}

/** What else can be done with a lesson than take it. */
export function LessonTools({ slug, shipped, onPresent, onLink }: LessonToolsProps) {
  return (
    <>
      <Button kind="quiet" icon="screen" data-done="" onClick={onPresent}>
        Present to a class
      </Button>
      {shipped && (
        <>
          {onLink && (
            <Button kind="quiet" icon="link" data-done="" onClick={onLink}>
              Link to this step
            </Button>
          )}
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
