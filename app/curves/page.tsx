import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { Page } from '../parts/Page';
import { routes } from '../parts/routes';
import {
  AscentRateSection,
  GradientFactorSection,
  HalfTimesSection,
  HowSureSection,
  ModelsSection,
} from './LaterPlates';
import { LimitsSection } from './LimitsSection';
import { NoStopSection } from './NoStopSection';
import styles from './curves.module.css';

export const metadata: Metadata = { title: routes.curves.name, description: routes.curves.summary };

interface Plate {
  id: string;
  title: string;
  lead: string;
  body: ReactNode;
}

const plates: readonly Plate[] = [
  {
    id: 'no-stop',
    title: 'No-stop time',
    lead: 'How long you may stay and still come straight up by the model. Lay other gases, limits, altitudes and a dive before over it, and the printed tables beside.',
    body: <NoStopSection />,
  },
  {
    id: 'limits',
    title: 'Limits',
    lead: 'Each compartment tolerates more when there is more pressure around it. Fast ones bear a great deal, slow ones little; gradient factors draw their own lines below.',
    body: <LimitsSection />,
  },
  {
    id: 'half-times',
    title: 'Half-times',
    lead: 'Change the pressure at once, and each compartment closes half of what is left in every half-time. After six half-times 98.4% is done, and it counts as settled.',
    body: <HalfTimesSection />,
  },
  {
    id: 'ascent-rate',
    title: 'Ascent rate',
    lead: 'The same time at depth, and a faster or slower way up: what is left in you at the surface if you skip every stop, and how long the way up is if you make them.',
    body: <AscentRateSection />,
  },
  {
    id: 'gradient-factors',
    title: 'Gradient factors',
    lead: 'The low one sets where stops begin, the high one what you surface with. Two numbers, one map: every pair of them, as contours.',
    body: <GradientFactorSection />,
  },
  {
    id: 'models',
    title: 'Models side by side',
    lead: 'From five compartments and one ratio to sixteen and their lines: the same dive by each.',
    body: <ModelsSection />,
  },
  {
    id: 'how-sure',
    title: 'How sure is it?',
    lead: 'Half-times and limits were fitted to people who differ, gauges are off by a little, and nobody knows what you began with. Here the model’s figure is a band.',
    body: <HowSureSection />,
  },
];

/** The model without a dive. */
export default function CurvesPage() {
  return (
    <Page
      title="Curves"
      lead="The model without a dive: what it says of every depth, rate and limit at once. Drag a line or use the arrow keys on its slider to read a curve; each has its table."
    >
      <nav aria-label="On this page" className={`${styles.contents} unprinted`}>
        <ol>
          {plates.map(({ id, title }) => (
            <li key={id}>
              <a href={`#${id}`}>{title}</a>
            </li>
          ))}
        </ol>
      </nav>
      {plates.map(({ id, title, lead, body }) => (
        <section key={id} id={id} aria-labelledby={`${id}-title`} className={styles.section}>
          <h2 id={`${id}-title`}>{title}</h2>
          <p>{lead}</p>
          {body}
        </section>
      ))}
    </Page>
  );
}
