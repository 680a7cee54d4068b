import { create } from 'zustand';
import { classAddress } from '@/lib/class/address';
import { after, EMPTY_CLASS, type ClassEvent, type ClassState, type PhoneEvent } from '@/lib/class/class-state';
import { viewOf } from '@/lib/class/view';
import { keptRecord } from '../../keep/kept-record';
import { hereOfServer, openToNetwork, type Here } from '../../parts/here';
import { lastingLine } from '../lasting-line';
import { classKind, type KeptClass } from './kept-class';

type Standing =
  /** Not looked yet. */
  | 'looking'
  /** No class is held here. */
  | 'none'
  /** There is no server that could. */
  | 'no server'
  | 'opening'
  | 'open'
  /** The line is cut and comes back by itself. */
  | 'lost'
  /** Another window holds it. */
  | 'elsewhere';

interface TeacherState {
  readonly standing: Standing;
  readonly held: KeptClass | undefined;
  /** Where phones reach this server. */
  readonly here: Here | undefined;
  readonly told: string | undefined;
}

/** The class this page holds. */
export const useTeacher = create<TeacherState>()(() => ({
  standing: 'looking',
  held: undefined,
  here: undefined,
  told: undefined,
}));

const { setState: set, getState: get } = useTeacher;

/** What the class is, as the page holds it. */
export const useClass = (): ClassState => useTeacher((one) => one.held?.state ?? EMPTY_CLASS);

const record = keptRecord(classKind, () => undefined);
/** How long it rests before it is kept: what came after is with the server. */
const REST_MS = 400;
/** Phones are heard together, so often. */
const GATHER_MS = 40;

let letGo: (() => void) | undefined;
let resting: ReturnType<typeof setTimeout> | undefined;

/** Writes the class down now. */
function keepNow(): void {
  clearTimeout(resting);
  resting = undefined;
  const { held } = get();
  if (held) record.keep(held);
}

function keepSoon(): void {
  resting ??= setTimeout(keepNow, REST_MS);
}

function hold(change: Partial<KeptClass>): void {
  const { held } = get();
  if (held) set({ held: { ...held, ...change } });
  keepSoon();
}

/** Looks for a server, and takes up the class this page held before. */
export async function start(): Promise<void> {
  const here = await hereOfServer();
  const kept = record.now();
  set({ here, held: kept, standing: here ? (kept && !kept.state.ended ? 'opening' : 'none') : 'no server' });
  window.addEventListener('pagehide', keepNow);
  if (here && kept && !kept.state.ended) await open(kept);
}

/** Leaves the page: the class stays, for the next. */
export function stop(): void {
  window.removeEventListener('pagehide', keepNow);
  if (resting) keepNow();
  letGo?.();
  letGo = undefined;
}

/** Opens a class of one's own, and the server to the network for as long. */
export async function openClass(): Promise<void> {
  set({ standing: 'opening', told: undefined });
  const bytes = crypto.getRandomValues(new Uint8Array(24));
  const secret = btoa(String.fromCharCode(...bytes))
    .replaceAll('+', '-')
    .replaceAll('/', '_');
  await open({
    secret,
    code: '',
    shown: 0,
    born: '',
    seq: 0,
    openedNetwork: get().held?.openedNetwork ?? false,
    state: EMPTY_CLASS,
  });
}

async function open(kept: KeptClass): Promise<void> {
  const openedNetwork = (await networkOpened()) || kept.openedNetwork;
  const answered = await fetch(classAddress.open, {
    method: 'POST',
    headers: { 'content-type': 'application/json', authorization: `Teacher ${kept.secret}` },
    body: '{}',
  }).catch(() => undefined);
  const said = answered && ((await answered.json().catch(() => undefined)) as { code?: string; refused?: string });
  if (answered && !said) {
    set({ standing: 'no server' });
    return;
  }
  if (answered && !answered.ok) {
    set({ standing: 'none', told: said?.refused });
    return;
  }
  const code = said?.code ?? kept.code;
  if (code === '') {
    set({
      standing: 'none',
      told: 'The server did not answer. Look whether it still runs, then open the class again.',
    });
    return;
  }
  set({ held: { ...kept, code, openedNetwork } });
  keepNow();
  listen();
}

/** Opens the server to the network where it is not and this page may; true if this did. */
async function networkOpened(): Promise<boolean> {
  const here = await hereOfServer();
  if (here) set({ here });
  if (!here?.maySwitch || here.inNetwork.length > 0) return false;
  const now = await openToNetwork(true);
  if (now) set({ here: now });
  return (now?.inNetwork.length ?? 0) > 0;
}

function teacherFetch(path: string, body: unknown): Promise<Response | undefined> {
  const { code, secret } = get().held!;
  return fetch(`${path}?code=${code}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', authorization: `Teacher ${secret}` },
    body: JSON.stringify(body),
  }).catch(() => undefined);
}

let heard: { readonly seq: number; readonly event: PhoneEvent }[] = [];
let gathering: ReturnType<typeof setTimeout> | undefined;

function gather(): void {
  clearTimeout(gathering);
  gathering = undefined;
  const { held } = get();
  if (!held || heard.length === 0) return;
  const state = heard.reduce<ClassState>((now, { event }) => after(now, event), held.state);
  const seq = Math.max(held.seq, ...heard.map((one) => one.seq));
  heard = [];
  hold({ state, seq });
}

function listen(): void {
  letGo?.();
  letGo = lastingLine({
    ask(signal) {
      const { code, secret, born, seq } = get().held!;
      return fetch(`${classAddress.hear}?code=${code}&born=${encodeURIComponent(born)}&since=${seq}`, {
        headers: { authorization: `Teacher ${secret}` },
        cache: 'no-store',
        signal,
      });
    },
    onOpen: () => undefined,
    onEvent(event, data) {
      if (event === 'phone') {
        heard.push(data as (typeof heard)[number]);
        gathering ??= setTimeout(gather, GATHER_MS);
      } else if (event === 'hello') {
        gather();
        const { born, seq, here } = data as { born: string; seq: number; here: string[] };
        hold({ state: after(get().held!.state, { kind: 'opened', here }), born, seq });
        set({ standing: 'open', told: undefined });
        void show();
      } else if (event === 'elsewhere') {
        letGo?.();
        letGo = undefined;
        set({ standing: 'elsewhere' });
      }
    },
    async onEnd(end) {
      if (get().standing === 'open') set({ standing: 'lost' });
      // A server that was started anew knows of no class: this page brings it back.
      if (end === 'missing') await reopen();
    },
  });
}

async function reopen(): Promise<void> {
  const { held } = get();
  if (!held || held.state.ended) return;
  if (held.openedNetwork) await networkOpened();
  await fetch(classAddress.open, {
    method: 'POST',
    headers: { 'content-type': 'application/json', authorization: `Teacher ${held.secret}` },
    body: '{}',
  }).catch(() => undefined);
}

/** Takes an older window's place. */
export function holdHere(): void {
  const kept = record.now();
  if (!kept) return;
  set({ held: kept, standing: 'opening' });
  listen();
}

/** What the teacher does: it is so at once here, and then on every phone. */
export function does(event: ClassEvent): void {
  const { held } = get();
  if (!held) return;
  gather();
  hold({ state: after(get().held!.state, event) });
  void show();
}

let showing = false;
let showAgain = false;

/** Has phones show what the class has come to; the newest is sent where several come together. */
async function show(): Promise<void> {
  showAgain = showing;
  if (showing) return;
  showing = true;
  do {
    showAgain = false;
    const { held } = get();
    if (!held) break;
    const shown = held.shown + 1;
    hold({ shown });
    await teacherFetch(classAddress.show, viewOf(held.state, shown));
  } while (showAgain as boolean);
  showing = false;
}

let pointed: number | undefined;
let pointing = false;
const POINT_MS = 150;

/** Tells phones where the hand stands on the dive they follow; the latest place is sent, some times a second. */
export function point(atS: number): void {
  pointed = atS;
  if (pointing) return;
  pointing = true;
  setTimeout(() => {
    pointing = false;
    const latest = pointed;
    if (latest !== undefined && get().held && get().standing === 'open')
      void teacherFetch(classAddress.point, { atS: latest });
  }, POINT_MS);
}

/** Ends the class for everyone; its results stay here until they are forgotten. */
export async function endClass(): Promise<void> {
  const { held } = get();
  if (!held) return;
  await teacherFetch(classAddress.end, {});
  letGo?.();
  letGo = undefined;
  gather();
  hold({ state: after(get().held!.state, { kind: 'ended' }), openedNetwork: false });
  keepNow();
  set({ standing: 'none' });
  if (held.openedNetwork) {
    const here = await openToNetwork(false);
    if (here) set({ here });
  }
}

/** Forgets everything anyone answered, here and on the server. */
export async function forgetClass(): Promise<void> {
  const { standing } = get();
  heard = [];
  if (standing === 'open') {
    await teacherFetch(classAddress.forget, {});
    does({ kind: 'forgotten' });
  } else hold({ state: { ...after(get().held!.state, { kind: 'forgotten' }), ended: true } });
  keepNow();
}
