import type { Metadata } from 'next';
import { DataTable } from '../parts/DataTable';
import { Page } from '../parts/Page';
import { routes } from '../parts/routes';
import styles from './access.module.css';

export const metadata: Metadata = { title: routes.access.name, description: routes.access.summary };

interface Key {
  readonly keys: string;
  readonly does: string;
}

const KEYS: readonly Key[] = [
  { keys: 'Space', does: 'Plays and pauses the dive wherever no field has the focus' },
  { keys: 'F2', does: 'Says where the diver is: time, depth, rate, stop, time to surface, who leads' },
  { keys: 'Ctrl+Z, Ctrl+Shift+Z', does: 'Takes back the last change of the desk, and does it again' },
  { keys: 'Arrows, Page Up, Page Down', does: 'On a point of the dive: move it in depth and time' },
  { keys: 'Home, End', does: 'On a point: to the first and the last' },
  { keys: 'Insert, Delete', does: 'On a point: adds one at the time cursor, takes this one away' },
  {
    keys: '↑ or ↓ held, Page Up or Page Down tapped, 0',
    does: 'While steering: a speed while held, a speed that stays, level',
  },
  { keys: 'Escape', does: 'Closes what was opened last and goes back to what opened it' },
];

/** What is supported and what is not, said plainly to whoever depends on it. */
export default function AccessPage() {
  return (
    <Page
      title={routes.access.name}
      lead="The same lesson for everyone is the aim. This page says how far that goes: what is supported, how it was tried, and what is left out."
    >
      <section aria-labelledby="heard" className={styles.section}>
        <h2 id="heard">Without sight</h2>
        <ul>
          <li>
            While a dive plays or is steered, one voice tells what changes: a ceiling that appears or goes, a stop that
            is owed, alarms and rules, and the no-stop time at 10, 5 and 1 minutes. So on the desk, in lessons, on a
            phone in a class and on a page of one dive. Clocks are silent. Sentences keep at least three seconds apart,
            and later ones are put together.
          </li>
          <li>
            “Hold when something happens” has a dive wait at each event wherever it plays, so that you set the pace; in
            a lesson’s run that shows the dive it is under “Speed and moments”, and the run waits at the moments worth a
            look besides. F2 says where the diver is at any moment; in a lesson’s run, what stands beside it and no
            more, so that nothing is given away.
          </li>
          <li>
            After an edit has settled, what it changed is said: the point, the stops, the deepest ceiling. Undoing,
            covering, choosing and keeping say what they did. A covered reading is never said.
          </li>
          <li>
            Every picture has a sentence of what it shows, and a table behind it. The table of the dive has the stop,
            who leads, what the unit tells and a row for now; that of the chase how near each compartment is to its
            limit at the surface, who leads and who is past.
          </li>
          <li>
            A curve can be answered in boxes, at the moments its lesson names and at others you add; it is read back as
            it stands, and judged as a drawn one is. What is wrong in a box is said once typing pauses, by the name of
            the box. A press that can do nothing yet says why, and goes to the box that has to be mended or filled. The
            events marked on a dive are read in their order, in words.
          </li>
        </ul>
      </section>

      <section aria-labelledby="keys" className={styles.section}>
        <h2 id="keys">Without a mouse</h2>
        <p>
          Everything that is dragged has keys, and nothing has a time limit. Play is within five presses of Tab on the
          desk, and “why?” comes right after the reading it is about. A tap on the lever sets a speed that stays, and
          “Offer speeds” lets a single switch steer. The presenter’s keys are listed there under “?”.
        </p>
        <DataTable
          caption="Keys on the desk"
          captionShown
          columns={[
            { heading: 'Key', cell: ({ keys }: Key) => keys },
            { heading: 'What it does', cell: ({ does }) => does },
          ]}
          rows={KEYS}
        />
      </section>

      <section aria-labelledby="enlarged" className={styles.section}>
        <h2 id="enlarged">Enlarged, spaced, in other colours</h2>
        <ul>
          <li>
            At 200 and 400 per cent, and in a window 320 px wide, the parts of the desk follow one another, and a line
            of readings and the hand on time stay in sight. At 400 per cent of a small screen a picture is seen in
            parts.
          </li>
          <li>
            Where a machine forces its own colours the pictures take them, with gas and limit apart. Whoever asks for
            more contrast gets black lines on white, or white on black. No meaning rests on colour alone.
          </li>
          <li>Where less motion is asked for, nothing moves but the dive that you play.</li>
        </ul>
      </section>

      <section aria-labelledby="not" className={styles.section}>
        <h2 id="not">What is not supported, or not known</h2>
        <ul>
          <li>
            What is announced, where the focus goes and what can be read was tried in one browser, Chromium, by what it
            hands to screen readers. No screen reader, braille display or voice control was at hand: how they say it,
            with other browsers too, is unknown.
          </li>
          <li>
            There is no sound that follows the gas. A tone that beats as a compartment nears its limit was planned and
            left out untried: nobody at hand could listen to it, and a sound that misleads is worse than none.
          </li>
          <li>The drawings themselves can’t be felt out point by point; their tables are in their place.</li>
          <li>The words are in English alone, and in no sign language.</li>
        </ul>
      </section>
    </Page>
  );
}
