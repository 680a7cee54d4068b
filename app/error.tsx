'use client';

import { useEffect } from 'react';
import { Notice } from './Notice';
import { Button, ButtonLink } from './parts/Button';
import { ourFault } from './parts/our-fault';
import { routes } from './parts/routes';

/** Shown in place of a screen that failed. What failed exactly goes to the console: its words are seldom ours. */
export default function ScreenError({ error, reset }: { error: Error; reset: () => void }) {
  useEffect(() => void ourFault(error), [error]);
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
        tell whoever looks after the project which screen it was and what you did last; this browser’s console says
        more.
      </p>
    </Notice>
  );
}
