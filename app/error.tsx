'use client';

import { Notice } from './Notice';
import { Button, ButtonLink } from './parts/Button';
import { routes } from './parts/routes';

/** Shown in place of a screen that failed. It says what failed in the error's own words, since those are written to be read. */
export default function ScreenError({ error, reset }: { error: Error; reset: () => void }) {
  return (
    <Notice
      title="This screen stopped working"
      actions={
        <>
          <Button kind="primary" onClick={reset}>
            Try again
          </Button>
          <ButtonLink href={routes.home.path}>Go to the front door</ButtonLink>
        </>
      }
    >
      <p>
        The fault is ours, not yours. What you had saved is still kept on this machine. If trying again doesn’t help,
        pass this on to whoever looks after the project:
      </p>
      <p>
        <code>{error.message}</code>
      </p>
    </Notice>
  );
}
