import { keptRecord, type RecordKind } from '../../keep/kept-record';
import { useAtlas, type AtlasMoment, type WrittenChoices } from './atlas-store';
import { PLATES, type PlateId } from './plate-choices';

const isPlate = (text: unknown): text is PlateId => PLATES.some(({ id }) => id === text);

/** What follows the # of the page: the plate that is open, and what is chosen on it. */
export function atlasFragment({ plate, chosen }: AtlasMoment): string {
  const texts = new URLSearchParams(chosen[plate]).toString();
  return `#${plate}${texts === '' ? '' : `?${texts}`}`;
}

/** What a link asks for; undefined where it names no plate. One that names a plate alone says nothing of its choices. */
export function readFragment(
  fragment: string,
): { readonly plate: PlateId; readonly choices: WrittenChoices | undefined } | undefined {
  const [plate, texts] = fragment.replace(/^#/, '').split(/\?(.*)/s);
  if (!isPlate(plate)) return undefined;
  return { plate, choices: texts === undefined ? undefined : Object.fromEntries(new URLSearchParams(texts)) };
}

const lasts = 'what you choose on the curves lasts until the page is closed. The address of the page holds it, too.';
const atlasKind: RecordKind<AtlasMoment> = {
  name: 'halftime.curves',
  version: 1,
  // Used piece by piece: a choice that makes no sense is passed over where it is read.
  schema: {
    safeParse(record) {
      const { version, plate, chosen } = (record ?? {}) as Record<string, unknown>;
      if (version !== 1 || !isPlate(plate) || typeof chosen !== 'object' || chosen === null) return {};
      const texts = Object.entries(chosen).filter(
        ([id, written]) =>
          isPlate(id) &&
          typeof written === 'object' &&
          written !== null &&
          Object.values(written as object).every((text) => typeof text === 'string'),
      );
      return { data: { plate, chosen: Object.fromEntries(texts) as AtlasMoment['chosen'] } };
    },
  },
  write: ({ plate, chosen }) => ({ version: 1, plate, chosen }),
  words: {
    unread: 'What was kept of your curves can’t be read here, so they begin anew.',
    refused: {
      full: `There is no room left in this browser, so ${lasts}`,
      blocked: `This browser does not let the page keep anything, so ${lasts}`,
    },
    fileName: 'halftime-curves-unread.json',
  },
};

/** Browsers take an address a few times a second and no oftener. */
const REST_MS = 400;

/** Keeps the atlas on this machine and in the address, and opens what either says, until what it returns is called. */
export function keepAtlas(): () => void {
  const { show } = useAtlas.getState();
  const record = keptRecord(atlasKind, () => undefined);
  const fromAddress = () => {
    const asked = readFragment(location.hash);
    if (!asked) return;
    const { chosen } = useAtlas.getState();
    const { plate, choices } = asked;
    show({ plate, chosen: choices ? { ...chosen, [plate]: choices } : chosen });
  };
  const kept = record.now();
  // What was chosen before this was there is newer.
  const isEarly = Object.keys(useAtlas.getState().chosen).length > 0;
  if (kept && !isEarly) show(kept);
  fromAddress();
  let resting: ReturnType<typeof setTimeout> | undefined;
  const keep = () => {
    clearTimeout(resting);
    resting = undefined;
    const { plate, chosen } = useAtlas.getState();
    record.keep({ plate, chosen });
    const fragment = atlasFragment({ plate, chosen });
    if (location.hash !== fragment) history.replaceState(history.state, '', fragment);
  };
  const stop = useAtlas.subscribe((now, before) => {
    if (now.plate === before.plate && now.chosen === before.chosen) return;
    clearTimeout(resting);
    resting = setTimeout(keep, REST_MS);
  });
  if (isEarly) resting = setTimeout(keep, REST_MS);
  const leave = () => {
    if (resting !== undefined) keep();
  };
  window.addEventListener('hashchange', fromAddress);
  window.addEventListener('pagehide', leave);
  return () => {
    leave();
    stop();
    window.removeEventListener('hashchange', fromAddress);
    window.removeEventListener('pagehide', leave);
  };
}
