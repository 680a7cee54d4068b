'use client';

import { useEffect, useState } from 'react';
import { Button } from '../parts/Button';
import { QrFigure } from '../parts/QrFigure';
import type { Here } from '../parts/here';
import styles from './OnOtherScreens.module.css';

/** How a class opens the same site from its own screens, and what plain HTTP from another machine keeps from working. */
export function OnOtherScreens() {
  const [here, setHere] = useState<Here>();
  const [isPlain, setPlain] = useState(false);
  useEffect(() => {
    let gone = false;
    const look = async () => {
      const { hereOfServer } = await import('../parts/here');
      if (gone) return;
      setPlain(!window.isSecureContext);
      const told = await hereOfServer();
      if (!gone) setHere(told);
    };
    // Where there is no server to ask, the page stays as it is.
    look().catch(() => undefined);
    return () => {
      gone = true;
    };
  }, []);
  if (!here && !isPlain) return null;
  return (
    <section aria-labelledby="other-screens" className={`${styles.place} unprinted`}>
      <h2 id="other-screens">On other screens</h2>
      {isPlain && (
        <p>
          This page comes from another machine over plain HTTP. Everything works but two things, which browsers keep for
          safe addresses: it can’t be kept here for use without a network, and a link isn’t copied by a button; mark it
          and copy it yourself.
        </p>
      )}
      {here && <Addresses {...here} />}
      {here?.maySwitch && <Switch isOpen={here.inNetwork.length > 0} onTurned={setHere} />}
    </section>
  );
}

/** Opens the site to the network and closes it, where the server lets this page. */
function Switch({ isOpen, onTurned }: { isOpen: boolean; onTurned: (here: Here) => void }) {
  const [said, say] = useState('');
  const turn = async () => {
    const { openToNetwork } = await import('../parts/here');
    const here = await openToNetwork(!isOpen);
    if (here) onTurned(here);
    if (!here) say('The server did not answer. Look whether it still runs, then reload the page.');
    else if (!isOpen && here.inNetwork.length === 0)
      say('This machine is in no network by which others could reach it. Join one, then press again.');
    else say('');
  };
  return (
    <div className={styles.switch}>
      <Button onClick={() => void turn()}>{isOpen ? 'Close it to the network' : 'Open it to this network'}</Button>
      <p role="status">{said}</p>
    </div>
  );
}

function Addresses({ inNetwork, qr, maySwitch }: Here) {
  if (inNetwork.length === 0) {
    return (
      <p>
        Halftime is open to this machine alone.{' '}
        {maySwitch ? (
          'Opened to the network it is in, phones and other screens there can open it too, until it is closed or stopped. Each keeps its own work.'
        ) : (
          <>
            To open it to phones and other screens in the same network, stop it and start it with{' '}
            <code>npm start -- --class</code>.
          </>
        )}
      </p>
    );
  }
  return (
    <div className={styles.open}>
      <div>
        <p>Phones and other screens in the same network open it at:</p>
        <ul>
          {inNetwork.map((address) => (
            <li key={address}>
              <a href={address}>{address}</a>
            </li>
          ))}
        </ul>
        <p>
          Anyone in that network can. If one does not open, try the next, or ask whether the network lets its guests
          reach one another.
        </p>
      </div>
      {qr && <QrFigure qr={qr} />}
    </div>
  );
}
