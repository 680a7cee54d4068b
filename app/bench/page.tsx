import type { Metadata } from 'next';
import { earlyPressScript } from '../parts/early-press-script';
import { Page } from '../parts/Page';
import { routes } from '../parts/routes';
import { BenchScreen } from './BenchScreen';

export const metadata: Metadata = { title: routes.bench.name, description: routes.bench.summary };

export default function BenchPage() {
  return (
    <Page
      title="Bench sheet"
      lead="Script a pressure-chamber run, see what a correct instrument should show at each checkpoint, and enter what the units in the pot did show."
    >
      <script dangerouslySetInnerHTML={{ __html: earlyPressScript }} />
      <BenchScreen />
    </Page>
  );
}
