import type { SentAnswer } from '@/lib/class/answer';
import { IDLE_MS } from '@/lib/class/bounds';
import type { PhoneEvent } from '@/lib/class/class-state';
import { notTaken, type ClassView } from '@/lib/class/view';
import type { EventStream } from './event-stream';

/** Classes at once on one server. */
export const MOST_CLASSES = 20;
/** Phones of one class. */
export const MOST_PHONES = 300;
/** What phones did, kept for a teacher's page that is away: more than a lesson's worth. */
const MOST_KEPT = 20_000;
/** Windows of one phone. */
const MOST_LINES = 3;

interface Numbered {
  readonly seq: number;
  readonly event: PhoneEvent;
}

interface KnownPhone {
  readonly lines: Set<EventStream>;
  /** Its latest answer to each question and round. */
  readonly latest: Map<string, SentAnswer>;
  /** It came when the question was closed already, with an answer it could not send. */
  wasAway: boolean;
}

const newPhone = (): KnownPhone => ({ lines: new Set(), latest: new Map(), wasAway: false });

/** One class as the server has it: who is on the line, what everyone sees, and what the teacher's page has not heard yet. */
export interface OpenClass {
  readonly code: string;
  readonly secret: string;
  heardMs: number;
  view: ClassView | undefined;
  /** The view as it is sent, made once for all. */
  viewText: string;
  atS: number | undefined;
  teacher: EventStream | undefined;
  readonly phones: Map<string, KnownPhone>;
  events: Numbered[];
  seq: number;
}

/** Says why something can't be, with the status it is answered with. */
export class Refusal extends Error {
  constructor(
    readonly status: number,
    message: string,
  ) {
    super(message);
  }
}

/** All classes of one server, in memory alone. */
export class ClassHall {
  /** Tells a teacher's page that this is another server than it knew. */
  readonly born = `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 8)}`;
  private readonly classes = new Map<string, OpenClass>();

  constructor(private readonly now: () => number = Date.now) {}

  /** Called whenever a class is over. */
  onOver: () => void = () => undefined;

  count(): number {
    return this.classes.size;
  }

  /** The class with a code, if there is one. */
  get(code: string): OpenClass | undefined {
    this.sweep();
    return this.classes.get(code);
  }

  open(code: string, secret: string): OpenClass {
    this.sweep();
    if (this.classes.size >= MOST_CLASSES)
      throw new Refusal(503, `${MOST_CLASSES} classes are open on this server; end one of them first.`);
    const made: OpenClass = {
      code,
      secret,
      heardMs: this.now(),
      view: undefined,
      viewText: '',
      atS: undefined,
      teacher: undefined,
      phones: new Map(),
      events: [],
      seq: 0,
    };
    this.classes.set(code, made);
    return made;
  }

  /** Ends a class for everyone on its lines. */
  end({ code }: Pick<OpenClass, 'code'>): void {
    const one = this.classes.get(code);
    if (!one) return;
    this.classes.delete(code);
    for (const stream of [...linesOf(one), ...(one.teacher ? [one.teacher] : [])]) {
      stream.send('over', {});
      stream.end();
    }
    this.onOver();
  }

  /** Ends the classes in which nothing has been said for long. */
  sweep(): void {
    const nowMs = this.now();
    for (const one of this.classes.values()) if (nowMs - one.heardMs > IDLE_MS) this.end(one);
  }

  heard(one: OpenClass): void {
    one.heardMs = this.now();
  }

  private tell(one: OpenClass, event: PhoneEvent): void {
    one.seq += 1;
    const numbered = { seq: one.seq, event };
    one.events.push(numbered);
    if (one.events.length > MOST_KEPT) one.events.shift();
    one.teacher?.send('phone', numbered);
  }

  /** A phone comes in, for the first time or again. */
  join(one: OpenClass, phone: string, name: string): void {
    if (!one.phones.has(phone) && one.phones.size >= MOST_PHONES)
      throw new Refusal(503, `This class has ${MOST_PHONES} phones, which is the most it holds.`);
    if (!one.phones.has(phone)) one.phones.set(phone, newPhone());
    this.tell(one, { kind: 'joined', phone, name });
  }

  /** A phone's line. A phone this server never met, with a token that fits, was in the class before the server began. */
  hold(one: OpenClass, phone: string, stream: EventStream): void {
    let known = one.phones.get(phone);
    if (!known) {
      if (one.phones.size >= MOST_PHONES)
        throw new Refusal(503, `This class has ${MOST_PHONES} phones, which is the most it holds.`);
      one.phones.set(phone, (known = newPhone()));
    }
    for (const older of [...known.lines].slice(0, Math.max(0, known.lines.size - MOST_LINES + 1))) older.end();
    known.wasAway = known.lines.size === 0 && one.view?.question?.phase !== 'asking';
    known.lines.add(stream);
    if (known.lines.size === 1) this.tell(one, { kind: 'returned', phone });
    if (one.view) stream.send('view', one.viewText);
    if (one.atS !== undefined) stream.send('at', { atS: one.atS });
  }

  letGo(one: OpenClass, phone: string, stream: EventStream): void {
    const known = one.phones.get(phone);
    if (!known?.lines.delete(stream) || known.lines.size > 0 || !this.classes.has(one.code)) return;
    this.tell(one, { kind: 'left', phone });
  }

  /** Takes an answer, or says why not. The same answer sent twice is taken once. */
  answer(one: OpenClass, phone: string, sent: SentAnswer): void {
    const known = one.phones.get(phone);
    if (!known) throw new Refusal(409, 'The line to the class was cut. Wait a moment: it comes back by itself.');
    const key = `${sent.ask} ${sent.round}`;
    const before = known.latest.get(key);
    if (before && before.nth === sent.nth && JSON.stringify(before.answer) === JSON.stringify(sent.answer)) return;
    if (before && before.nth >= sent.nth)
      throw new Refusal(409, 'You have given a newer answer than this one; the newer one stands.');
    const refused = notTaken(one.view, sent, known.wasAway);
    if (refused !== undefined) throw new Refusal(409, refused);
    known.latest.set(key, sent);
    this.tell(one, { kind: 'answered', phone, ...sent });
  }

  /** The teacher's page: what it has not heard is told first. A window that held the class before is told so. */
  hear(one: OpenClass, stream: EventStream, born: string, since: number): void {
    one.teacher?.send('elsewhere', {});
    one.teacher?.end();
    one.teacher = stream;
    const here = [...one.phones].flatMap(([phone, { lines }]) => (lines.size > 0 ? [phone] : []));
    for (const numbered of one.events)
      if ((born !== this.born || numbered.seq > since) && isKept(numbered.event)) stream.send('phone', numbered);
    stream.send('hello', { born: this.born, seq: one.seq, here });
  }

  leave(one: OpenClass, stream: EventStream): void {
    if (one.teacher === stream) one.teacher = undefined;
  }

  /** What all phones see from now on; an older view than the one they have is none. */
  show(one: OpenClass, view: ClassView): void {
    if (one.view && view.version <= one.view.version) return;
    if (view.question?.phase !== 'closed') for (const phone of one.phones.values()) phone.wasAway = false;
    // Answers to what is not before the class any more are not needed to know a newer one by.
    if (view.question?.ask.id !== one.view?.question?.ask.id)
      for (const { latest } of one.phones.values()) latest.clear();
    one.view = view;
    one.viewText = JSON.stringify(view);
    for (const line of linesOf(one)) line.send('view', one.viewText);
  }

  /** Where the teacher's hand stands on the dive that is followed, s. */
  point(one: OpenClass, atS: number): void {
    one.atS = atS;
    const text = JSON.stringify({ atS });
    for (const line of linesOf(one)) line.send('at', text);
  }

  /** Forgets what the phones of a class did, and keeps them on the line. */
  forget(one: OpenClass): void {
    one.events = [];
    for (const { latest } of one.phones.values()) latest.clear();
  }
}

/** Who is here is told anew to a page that returns; the comings and goings before are not. */
function isKept({ kind }: PhoneEvent): boolean {
  return kind === 'answered' || kind === 'joined';
}

function linesOf({ phones }: OpenClass): EventStream[] {
  return [...phones.values()].flatMap(({ lines }) => [...lines]);
}
