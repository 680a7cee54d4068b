import { HalfTimesPlate } from './front/HalfTimesPlate';
import styles from './page.module.css';
import { ButtonLink } from './parts/Button';
import { openRoutes, routes, type Route } from './parts/routes';

const readers = [
  {
    who: 'If you teach',
    what: 'Show a class or a customer what an instrument shows on the way down and up, and why it suddenly asks for a stop: time overstayed, a fast ascent, a wrong setting.',
  },
  {
    who: 'If you are learning',
    what: 'Explore no-stop times, safety stops, second dives and flying after diving. Guess first, then see, then read the working.',
  },
  {
    who: 'If you study alone',
    what: 'Before a deep course: gas to carry, oxygen, narcosis and staged stops, with every number open to the question why.',
  },
];

const desk: Route = routes.desk;
const lessons: Route = routes.lessons;

export default function FrontDoor() {
  return (
    <div className={styles.page}>
      <div className={styles.opening}>
        <div className={styles.words}>
          <h1>See why a dive instrument asks for a stop</h1>
          <p className={styles.lead}>
            Script a dive or steer one by hand. Watch sixteen compartments load, the no-stop time fall and the ceiling
            appear. Then ask any number where it came from.
          </p>
          <div className={styles.actions}>
            {desk.open && (
              <ButtonLink href={desk.path} kind="primary">
                Open the desk
              </ButtonLink>
            )}
            {lessons.open && <ButtonLink href={lessons.path}>Start a lesson</ButtonLink>}
          </div>
          <p className={styles.fine}>It runs in this browser, with no account, and nothing you do leaves your machine.</p>
        </div>
        <HalfTimesPlate />
      </div>

      <section aria-labelledby="readers" className={styles.section}>
        <h2 id="readers">Who it is for</h2>
        <dl className={styles.readers}>
          {readers.map(({ who, what }) => (
            <div key={who}>
              <dt>{who}</dt>
              <dd>{what}</dd>
            </div>
          ))}
        </dl>
      </section>

      <section aria-labelledby="contents" className={styles.section}>
        <h2 id="contents">What is here</h2>
        <ul className={styles.contents}>
          {openRoutes.map(({ path, name, summary }) => (
            <li key={path}>
              <a href={path}>
                <span className={styles.name}>{name}</span>
                <span className={styles.leader} aria-hidden="true" />
                <span className={styles.summary}>{summary}</span>
              </a>
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
}
