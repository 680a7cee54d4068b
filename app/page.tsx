import { doors, type Door } from './front/doors';
import { OnOtherScreens } from './front/OnOtherScreens';
import { PromiseLater } from './front/PromiseLater';
import { WhereYouWere } from './front/WhereYouWere';
import { loadLessons } from './lessons/load-lessons';
import styles from './page.module.css';
import { ButtonLink } from './parts/Button';
import { routes } from './parts/routes';

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
        <h1>See why a dive instrument asks for a stop</h1>
        <div className={styles.plate}>
          <div className={styles.plateRoom}>
            <PromiseLater />
          </div>
        </div>
        <div className={styles.words}>
          <p className={styles.lead}>
            Script a dive or steer one by hand. Watch sixteen compartments load, the no-stop time fall and the ceiling
            appear. Then ask any number where it came from.
          </p>
          <div className={styles.actions}>
            <ButtonLink href={learn.ways[0].path}>Start the first lesson</ButtonLink>
            <ButtonLink href={routes.desk.path}>Open the desk</ButtonLink>
          </div>
          <WhereYouWere lessons={shelved} />
        </div>
      </div>

      <section aria-labelledby="doors" className={styles.section}>
        <h2 id="doors">Where to begin</h2>
        <div className={styles.doors}>
          {[teach, learn, alone].map((door) => (
            <DoorWays key={door.who} {...door} />
          ))}
        </div>
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
