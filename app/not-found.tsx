import type { Metadata } from 'next';
import { Notice } from './Notice';
import { AsBuilt } from './parts/AsBuilt';
import { layDown } from './parts/as-built';
import { ButtonLink } from './parts/Button';
import { routes } from './parts/routes';

export const metadata: Metadata = { title: 'Not here' };

/** It is part of every page, so it is laid down: its text stands in the one page that shows it. */
export default function NotFound() {
  return <AsBuilt name={layDown('not-here', <NotHere />)} />;
}

function NotHere() {
  return (
    <Notice
      title="There is no page here"
      actions={
        <ButtonLink href={routes.home.path} kind="primary">
          Go to the front door
        </ButtonLink>
      }
    >
      <p>
        The address may be mistyped, or the page may have moved. Nothing is lost: your dives and settings are kept on
        this machine.
      </p>
    </Notice>
  );
}
