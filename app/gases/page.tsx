import type { Metadata } from 'next';
import { SURFACE_HALF_TIME_MIN } from '@/lib/exposure/oxygen-exposure';
import { TURN_RULE_MEANINGS, TURN_RULES } from '@/lib/exposure/turn-pressure';
import { LEAST_PO2_BAR, RESTING_PO2_BAR, WORKING_PO2_BAR } from '@/lib/physics/oxygen-limits';
import { ButtonLink } from '../parts/Button';
import { Caution } from '../parts/Caution';
import { Page } from '../parts/Page';
import { routes } from '../parts/routes';
import { CylinderSum } from './CylinderSum';
import { GasBoard } from './GasBoard';
import { MixFinder } from './MixFinder';
import { SiteControls } from './SiteControls';
import styles from './gases.module.css';
import { capital } from '@/lib/quantity/capital';

export const metadata: Metadata = { title: routes.gases.name, description: routes.gases.summary };

const terms = [
  [
    'Partial pressure',
    'A gas’s share of the mixture times the pressure around you. It is what your body meets, whatever the percentage on the cylinder says.',
  ],
  [
    'Maximum operating depth',
    `Where oxygen reaches a limit: ${WORKING_PO2_BAR} bar while working and ${RESTING_PO2_BAR} bar at rest are commonly taught. Neither is a line nature drew.`,
  ],
  [
    'Too little oxygen',
    `${LEAST_PO2_BAR} bar is a customary floor, and no line nature drew: somewhat below it consciousness goes, without warning. A gas for great depth can be deadly at the surface.`,
  ],
  [
    'Equivalent air depth',
    'Where air would load you with as much nitrogen. It is how one air table serves for nitrox.',
  ],
  [
    'Equivalent narcotic depth',
    'Where air would be as narcotic. Authorities differ on whether oxygen counts; the switch above sets it for this whole screen.',
  ],
  ['Density', 'How heavy the gas is to move. Effort, carbon dioxide and narcosis feed on one another in dense gas.'],
] as const;

/** Awareness and arithmetic of breathing gases; never a plan to dive. */
export default function GasesPage() {
  return (
    <Page
      title="Gases"
      lead="What a breathing gas costs and buys: oxygen, narcosis, density, no-stop time, and how much of it there is. For those who study before a deep course, and those who teach one."
    >
      <Caution about="deepCourse" />
      <SiteControls />

      <section aria-labelledby="properties" className={styles.section}>
        <h2 id="properties">Gases side by side</h2>
        <dl className={styles.terms}>
          {terms.map(([term, meaning]) => (
            <div key={term}>
              <dt>{term}</dt>
              <dd>{meaning}</dd>
            </div>
          ))}
        </dl>
        <GasBoard />
        <p>
          The no-stop time is that of a rested diver who is at the depth at once. Helium is counted by its own
          half-times: it comes and goes faster, and the model asks for more time with it.
        </p>
      </section>

      <section aria-labelledby="mix" className={styles.section}>
        <h2 id="mix">The best mix for a depth</h2>
        <p>
          As much oxygen as the limit allows, since oxygen is what shortens the way up; as much helium as narcosis asks
          for; nitrogen is what is left.
        </p>
        <MixFinder />
      </section>

      <section aria-labelledby="cylinder" className={styles.section}>
        <h2 id="cylinder">A cylinder, and what you breathe</h2>
        <p>
          One line of a logbook gives your surface consumption rate. High pressures hold less gas than volume times
          pressure says, so the same dive reads a little differently by the real gas.
        </p>
        <CylinderSum />
        <h3>When to turn back</h3>
        <p>
          All three are common practice with no single source. The desk’s picture “Cylinders” works them out over the
          reserve two divers need from the deepest point.
        </p>
        <dl className={styles.terms}>
          {TURN_RULES.map((rule) => (
            <div key={rule}>
              <dt>{capital(rule)}</dt>
              <dd>{TURN_RULE_MEANINGS[rule]}</dd>
            </div>
          ))}
        </dl>
      </section>

      <section aria-labelledby="oxygen" className={styles.section}>
        <h2 id="oxygen">Oxygen over time</h2>
        <p>
          The desk’s picture “Oxygen” counts three things. The single-exposure and 24-hour fractions come from the NOAA
          limits: each minute uses one part in so many as the limit at that pressure has minutes. Between the printed
          rows the limit is taken to change evenly, which is a choice of this tool. At the surface the single-exposure
          fraction is taken to halve every {SURFACE_HALF_TIME_MIN} min: common practice, with no source. Lung units
          follow Lambertsen and Clark’s formula and do not fade.
        </p>
        <p>
          A fraction under 100% has never been a promise. Convulsions under water have happened well inside these
          limits.
        </p>
        <p>
          <ButtonLink href={routes.desk.path}>Follow it over a dive on the desk</ButtonLink>
        </p>
      </section>

      <section aria-labelledby="tables" className={styles.section}>
        <h2 id="tables">Tables and a bottom timer</h2>
        <p>
          How a dive is carried out with a printed table and an instrument in gauge mode, and a teaching table worked
          out by the engine for limits you choose. It prints with its caution across it.
        </p>
        <p>
          <ButtonLink href={`${routes.gases.path}table/`}>Make a teaching table</ButtonLink>
        </p>
      </section>
    </Page>
  );
}
