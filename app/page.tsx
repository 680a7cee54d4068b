import { doors, type Door } from './front/doors';
import { HalfTimesPlate } from './front/HalfTimesPlate';
import { OnOtherScreens } from './front/OnOtherScreens';
import { WhereYouWere } from './front/WhereYouWere';
import { loadLessons } from './lessons/load-lessons';
import styles from './page.module.css';
import { ButtonLink } from './parts/Button';
import { openRoutes, routes } from './parts/routes';

export default function FrontDoor() {
  const lessons = loadLessons();
  const shelved = lessons.map(({ slug, lesson: { title, steps } }) => ({
    slug,
    title,
    steps: steps.map(({ id }) => id),
  }));
  const [teach, learn, alone] = doors(lessons);
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
            <ButtonLink href={teach.ways[0].path} kind="primary" icon="play">
              {teach.ways[0].words}
            </ButtonLink>
            <ButtonLink href={learn.ways[0].path}>Start the first lesson</ButtonLink>
            <ButtonLink href={routes.desk.path}>Open the desk</ButtonLink>
          </div>
          <WhereYouWere lessons={shelved} />
        </div>
        <HalfTimesPlate />
      </div>

      <section aria-labelledby="doors" className={styles.section}>
        <h2 id="doors">Where to begin</h2>
        <div className={styles.doors}>
          {[teach, learn, alone].map((door) => (
            <DoorWays key={door.who} {...door} />
          ))}
        </div>
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

      <OnOtherScreens />
    </div>
  );
}

function DoorWays({ who, what, ways }: Door) {
  return (
    <div className={styles.door}>
      <h3>{who}</h3>
      <p>{what}</p>
      <ul>
        {ways.map(({ words, path }) => (
          <li key={path}>
            <a href={path}>{words}</a>
          </li>
        ))}
      </ul>
    </div>
  );
}
