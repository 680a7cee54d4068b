import { create } from 'zustand';
import { classAddress } from '@/lib/class/address';
import { IDLE_MS } from '@/lib/class/bounds';
import { after, EMPTY_CLASS, type ClassEvent, type ClassState, type PhoneEvent } from '@/lib/class/class-state';
import { viewOf } from '@/lib/class/view';
import { keptRecord } from '../../keep/kept-record';
import { hereOfServer, type Here } from '../../parts/here';
import { oncePainted } from '../../parts/after-paint';
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
  if (held) set({ held: { ...held, atMs: Date.now(), ...change } });
  keepSoon();
}

/** Looks for a server, and takes up the class this page held before. */
export async function start(): Promise<void> {
  const here = await hereOfServer();
  const held = record.now();
  const goesOn = held && !held.state.ended && !isIdle(held);
  set({ here, held, standing: here ? (goesOn ? 'opening' : 'none') : 'no server' });
  window.addEventListener('pagehide', keepNow);
  if (here && goesOn) await open(held);
  else if (here && held && !held.state.ended) isOver();
}

/** Whether nothing has been done or heard for so long that the class is over. */
function isIdle({ atMs }: KeptClass): boolean {
  return Date.now() - atMs > IDLE_MS;
}

/** The class has ended by itself. Its results stay here. */
function isOver(): void {
  ended();
  set({ told: 'Your class is over: for eight hours nothing was said in it. Its results are below.' });
}

/** Leaves the page: the class stays, for the next. */
export function stop(): void {
  window.removeEventListener('pagehide', keepNow);
  if (resting) keepNow();
  letGo?.();
  letGo = undefined;
}

/** Opens a class of one's own; the server opens itself to the network for as long. */
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
    atMs: Date.now(),
    state: EMPTY_CLASS,
  });
}

async function open(kept: KeptClass): Promise<void> {
  const answered = await askToOpen(kept);
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
  set({ held: { ...kept, code } });
  keepNow();
  listen();
}

/** Asks for the class on the server, and where phones reach it: another place than before, where the machine has moved. */
async function askToOpen({ secret }: KeptClass): Promise<Response | undefined> {
  const answered = await posted(classAddress.open, secret, {});
  const here = answered?.ok ? await hereOfServer() : undefined;
  if (here) set({ here });
  return answered;
}

function posted(address: string, secret: string, body: unknown): Promise<Response | undefined> {
  return fetch(address, {
    method: 'POST',
    headers: { 'content-type': 'application/json', authorization: `Teacher ${secret}` },
    body: JSON.stringify(body),
  }).catch(() => undefined);
}

/** Tells the server something of this class; undefined where it was not reached. */
export function teacherFetch(path: string, body: unknown): Promise<Response | undefined> {
  const { code, secret } = get().held!;
  return posted(`${path}?code=${code}`, secret, body);
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
        void tellForgotten();
        void show();
      } else if (event === 'elsewhere') {
        letGo?.();
        letGo = undefined;
        set({ standing: 'elsewhere' });
      } else if (event === 'over') isOver();
    },
    async onEnd(end) {
      if (get().standing === 'open') set({ standing: 'lost' });
      // A server that was started anew knows of no class: this page brings it back.
      return end === 'missing' && (await reopen());
    },
  });
}

/** Brings the class back to a server that was started anew, or to a network the machine has come into. */
export async function reopen(): Promise<boolean> {
  const { held } = get();
  if (!held || held.state.ended) return false;
  if (!isIdle(held)) return (await askToOpen(held))?.ok === true;
  isOver();
  return false;
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
  oncePainted(() => void show());
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

/** Ends the class for everyone; its results stay here until they are forgotten. */
export async function endClass(): Promise<void> {
  ended();
  await teacherFetch(classAddress.end, {});
}

function ended(): void {
  letGo?.();
  letGo = undefined;
  gather();
  hold({ state: after(get().held!.state, { kind: 'ended' }) });
  keepNow();
  set({ standing: 'none', told: undefined });
}

/** Forgets everything anyone answered, here and on the server. */
export async function forgetClass(): Promise<void> {
  heard = [];
  const { state } = get().held!;
  hold({ state: { ...after(state, { kind: 'forgotten' }), ended: state.ended } });
  keepNow();
  isForgotten = false;
  if (state.ended) return;
  await tellForgotten();
  void show();
}

/** Whether the server has forgotten too: it is told once it can be. */
let isForgotten = true;

async function tellForgotten(): Promise<void> {
  if (!isForgotten) isForgotten = (await teacherFetch(classAddress.forget, {}))?.ok === true;
}
