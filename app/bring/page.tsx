import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Metadata } from 'next';
import { Page } from '../parts/Page';
import { routes } from '../parts/routes';
import { BringScreen } from './BringScreen';

export const metadata: Metadata = { title: routes.bring.name, description: routes.bring.summary };

const SAMPLES = [
  { name: 'two-dives-with-faults.csv', title: 'Try an invented record with faults' },
  { name: 'quarry-clean.csv', title: 'Try an invented clean record' },
];

export default function BringPage() {
  const samples = SAMPLES.map((sample) => ({
    ...sample,
    text: readFileSync(join(process.cwd(), 'content/records', sample.name), 'utf8'),
  }));
  return (
    <Page
      title="Bring a dive"
      lead="Take a dive your instrument recorded to the desk. See what is wrong with the record, mend what you agree to, and lay what the instrument showed beside what the model says."
    >
      <BringScreen samples={samples} />
    </Page>
  );
}
