import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { classHandler } from '@/app/commands/class/class-handler';
import { ClassHall, MOST_CLASSES, MOST_PHONES } from '@/app/commands/class/class-hall';
import { serveSite, type RunningSite } from '@/app/commands/serve-site';
import { classAddress } from '@/lib/class/address';
import { IDLE_MS } from '@/lib/class/bounds';
import { after, EMPTY_CLASS, type ClassEvent, type ClassState, type PhoneEvent } from '@/lib/class/class-state';
import { answersOf, spreadOf } from '@/lib/class/spread';
import { viewOf } from '@/lib/class/view';
import { choiceAsk, choiceTruth } from '../class/asks';
import { line, newSecret, Phone, send, Teacher } from './class-client';

let folder: string;
let site: RunningSite;
let nowMs = 0;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'halftime-class-'));
  writeFileSync(join(folder, 'index.html'), 'The front page');
  const now = () => Date.now() + nowMs;
  site = await serveSite(folder, 0, { handlers: [classHandler(new ClassHall(now), now)] });
});
afterAll(async () => {
  await site.close();
  rmSync(folder, { recursive: true });
});

const asking = after(EMPTY_CLASS, { kind: 'asked', ask: choiceAsk, truth: choiceTruth });
const says = (option: number, nth = 1) => ({
  ask: 'a1',
  round: 0,
  nth,
  answer: { by: 'choice' as const, option },
});

/** A class with a question before it. */
async function opened(from?: string) {
  const teacher = new Teacher(site.address, newSecret(), from);
  expect((await teacher.open()).status).toBe(200);
  expect((await teacher.tell(classAddress.show, viewOf(asking, 1))).status).toBe(200);
  return teacher;
}

async function joined({ code }: Teacher, address: string) {
  const phone = new Phone(site.address, code, address);
  expect((await phone.join()).status).toBe(200);
  return phone;
}

describe('a class on the server', () => {
  it('brings an answer to the teacher and the view to every phone', async () => {
    const teacher = await opened();
    const hears = await teacher.hear();
    const phone = await joined(teacher, '127.2.0.1');
    const held = await phone.hold();
    expect(await held.until((event) => event === 'view')).toMatchObject({ question: { ask: { id: 'a1' } } });
    expect((await phone.answer(says(1))).status).toBe(200);
    expect(await hears.until((_, data: { event?: PhoneEvent }) => data.event?.kind === 'answered')).toMatchObject({
      event: { phone: phone.phone, answer: { option: 1 } },
    });
    held.cut();
    await hears.until((_, data: { event?: PhoneEvent }) => data.event?.kind === 'left');
    hears.cut();
  });

  it('lets a late phone land where the class is', async () => {
    const teacher = await opened();
    await teacher.tell(classAddress.show, viewOf(after(asking, { kind: 'closed' }), 2));
    await teacher.tell(classAddress.point, { atS: 90 });
    const held = await (await joined(teacher, '127.2.0.2')).hold();
    expect(await held.until((event) => event === 'view')).toMatchObject({ question: { phase: 'closed' } });
    expect(await held.until((event) => event === 'at')).toEqual({ atS: 90 });
    held.cut();
  });

  it('tells a teacher who reloaded what was missed, and only that', async () => {
    const teacher = await opened();
    const first = await teacher.hear();
    const hello = await first.until((event) => event === 'hello');
    const phone = await joined(teacher, '127.2.0.3');
    await phone.answer(says(0));
    const { seq } = await first.until((_, data: { event?: PhoneEvent }) => data.event?.kind === 'answered');
    first.cut();
    await phone.answer(says(2, 2));
    const again = await teacher.hear((hello as { born: string }).born, seq);
    await again.until((event) => event === 'hello');
    expect(again.heard.map(({ data }) => (data as { event?: PhoneEvent }).event).filter(Boolean)).toMatchObject([
      { kind: 'answered', answer: { option: 2 } },
    ]);
    again.cut();
  });

  it('tells an older window of the teacher that the class is held elsewhere', async () => {
    const teacher = await opened();
    const older = await teacher.hear();
    const newer = await teacher.hear();
    await older.until((event) => event === 'elsewhere');
    await older.ended;
    newer.cut();
  });

  it('comes back whole on a server that was stopped and started: same code, same phones, answers sent again', async () => {
    const first = await serveSite(folder, 0, { handlers: [classHandler()] });
    const teacher = new Teacher(first.address);
    await teacher.open();
    await teacher.tell(classAddress.show, viewOf(asking, 1));
    const phones = await Promise.all(
      [1, 2, 3].map(async (i) => {
        const phone = new Phone(first.address, teacher.code, `127.2.1.${i}`);
        await phone.join();
        return phone;
      }),
    );
    const hears = await teacher.hear();
    let state: ClassState = asking;
    const take = (heard: readonly { readonly data: never }[]) =>
      heard
        .flatMap(({ data }) => (data as { event?: ClassEvent }).event ?? [])
        .forEach((event) => (state = after(state, event)));
    await phones[0]!.answer(says(0));
    await phones[1]!.answer(says(1));
    await hears.until(
      (_, data: { event?: PhoneEvent }) => data.event?.kind === 'answered' && data.event.phone === phones[1]!.phone,
    );
    take(hears.heard);
    await first.close();

    const second = await serveSite(folder, 0, { handlers: [classHandler()] });
    const back = new Teacher(second.address, teacher.secret);
    // A phone that is back before the teacher is told to wait.
    back.code = teacher.code;
    expect((await phones[0]!.hold(second.address)).status).toBe(404);
    await back.open();
    expect(back.code).toBe(teacher.code);
    await back.tell(classAddress.show, viewOf(state, 2));
    const again = await back.hear();
    const lines = await Promise.all(phones.map((phone) => phone.hold(second.address)));
    expect(lines.map(({ status }) => status)).toEqual([200, 200, 200]);
    // Each sends what it had said; the third had not been heard at all.
    await phones[0]!.answer(says(0), second.address);
    await phones[1]!.answer(says(1), second.address);
    await phones[2]!.answer(says(1), second.address);
    await again.until(
      (_, data: { event?: PhoneEvent }) => data.event?.kind === 'answered' && data.event.phone === phones[2]!.phone,
    );
    take(again.heard);
    expect(spreadOf(choiceAsk, answersOf(state.asked[0]!, 0))).toEqual({ by: 'choice', counts: [1, 2, 0] });
    await second.close();
  });

  it('takes the answer of a phone that was away while it was asked, until the spread is shown, and of no other', async () => {
    const teacher = await opened();
    const [away, here] = [await joined(teacher, '127.2.2.1'), await joined(teacher, '127.2.2.2')];
    const line = await here.hold();
    await line.until((event) => event === 'view');
    const closed = after(asking, { kind: 'closed' });
    await teacher.tell(classAddress.show, viewOf(closed, 2));
    expect(await here.answer(says(1))).toMatchObject({ status: 409, body: { refused: /closed/ } });
    expect(await away.answer(says(1))).toMatchObject({ status: 409, body: { refused: /closed/ } });
    const back = await away.hold();
    await back.until((event) => event === 'view');
    expect((await away.answer(says(1))).status).toBe(200);
    await teacher.tell(classAddress.show, viewOf(after(closed, { kind: 'spread shown' }), 3));
    expect((await away.answer(says(2, 2))).status).toBe(409);
    line.cut();
    back.cut();
  });

  it('does not mix with another class on the same server', async () => {
    const [one, other] = [await opened(), await opened()];
    expect(one.code).not.toBe(other.code);
    const [hearsOne, hearsOther] = [await one.hear(), await other.hear()];
    const phone = await joined(one, '127.2.0.4');
    await phone.answer(says(1));
    await hearsOne.until((_, data: { event?: PhoneEvent }) => data.event?.kind === 'answered');
    const stranger = new Phone(site.address, other.code, '127.2.0.4');
    Object.assign(stranger, { phone: phone.phone, token: phone.token });
    expect((await stranger.answer(says(1))).status).toBe(404);
    expect(JSON.stringify(hearsOther.heard)).not.toContain(phone.phone);
    hearsOne.cut();
    hearsOther.cut();
  });

  it('writes nothing to the disk', async () => {
    const phone = await joined(await opened(), '127.2.0.5');
    await phone.answer(says(1));
    expect(readdirSync(folder)).toEqual(['index.html']);
  });

  it('ends for everyone when the teacher ends it', async () => {
    const teacher = await opened();
    const phone = await joined(teacher, '127.2.0.6');
    const [held, hears] = [await phone.hold(), await teacher.hear()];
    await teacher.tell(classAddress.end);
    await held.until((event) => event === 'over');
    await hears.until((event) => event === 'over');
    await held.ended;
    expect(await phone.answer(says(1))).toMatchObject({ status: 404 });
    expect((await new Phone(site.address, teacher.code, '127.2.0.6').join()).body['refused']).toMatch(/no class/);
  });

  it('ends by itself after eight hours in which nothing was said', async () => {
    const teacher = await opened();
    nowMs += IDLE_MS - 60_000;
    expect((await teacher.tell(classAddress.forget)).status).toBe(200);
    nowMs += 2 * 60_000;
    expect((await teacher.tell(classAddress.forget)).status).toBe(404);
  });
});

describe('a full house', () => {
  it('takes no more classes and no more phones than it holds, and says so', () => {
    const hall = new ClassHall();
    const [first] = Array.from({ length: MOST_CLASSES }, (_, i) => hall.open(`CLASS${i}`, newSecret()));
    expect(() => hall.open('MORE', newSecret())).toThrow(/20 classes are open/);
    for (let i = 0; i < MOST_PHONES; i += 1) hall.join(first!, `phone-${i}`, '');
    expect(() => hall.join(first!, 'phone-more', '')).toThrow(/300 phones/);
    // One that was here before comes back all the same.
    expect(() => hall.join(first!, 'phone-7', '')).not.toThrow();
  });
});

describe('a hostile phone', () => {
  it('can neither act as the teacher nor hear what others answer', async () => {
    const teacher = await opened();
    const phone = await joined(teacher, '127.3.0.1');
    const other = await joined(teacher, '127.3.0.2');
    const held = await phone.hold();
    await other.answer(says(2));
    for (const path of [classAddress.show, classAddress.end, classAddress.forget, classAddress.point]) {
      const asked = { body: viewOf(EMPTY_CLASS, 99) };
      for (const proof of [undefined, phone.proof, phone.proof.replace('Phone', 'Teacher'), `Teacher ${newSecret()}`])
        expect((await send(site.address, `${path}?code=${teacher.code}`, { ...asked, proof })).status).toBe(404);
    }
    const listens = await line(site.address, `${classAddress.hear}?code=${teacher.code}`, phone.proof);
    expect(listens.status).toBe(404);
    await teacher.tell(classAddress.show, viewOf(after(asking, { kind: 'closed' }), 2));
    await held.until((_, data: { question?: { phase: string } }) => data.question?.phase === 'closed');
    expect(JSON.stringify(held.heard)).not.toContain(other.phone);
    expect(JSON.stringify(held.heard)).not.toContain('"option":2');
    held.cut();
  });

  it('can’t answer as another phone', async () => {
    const teacher = await opened();
    const [phone, other] = [await joined(teacher, '127.3.0.3'), await joined(teacher, '127.3.0.4')];
    const forged = new Phone(site.address, teacher.code, '127.3.0.3');
    Object.assign(forged, { phone: other.phone, token: phone.token });
    expect((await forged.answer(says(1))).status).toBe(404);
  });

  it('is refused when it sends an older answer once more, in words', async () => {
    const phone = await joined(await opened(), '127.3.0.5');
    await phone.answer(says(0, 1));
    await phone.answer(says(1, 2));
    expect(await phone.answer(says(0, 1))).toMatchObject({ status: 409, body: { refused: /newer answer/ } });
    expect(await phone.answer(says(0, 2))).toMatchObject({ status: 409 });
    // The very same again, as after a lost line, is no fault.
    expect((await phone.answer(says(1, 2))).status).toBe(200);
  });

  it('is stopped when it guesses codes, and others are not', async () => {
    const teacher = await opened();
    const guesses = [];
    for (let i = 0; i < 14; i += 1) guesses.push((await new Phone(site.address, 'ZZZZZ2', '127.3.0.6').join()).status);
    expect(guesses).toContain(404);
    expect(guesses.at(-1)).toBe(429);
    expect((await new Phone(site.address, teacher.code, '127.3.0.6').join()).status).toBe(429);
    expect((await new Phone(site.address, teacher.code, '127.3.0.7').join()).status).toBe(200);
  });

  it('is stopped when it answers too fast', async () => {
    const phone = await joined(await opened(), '127.3.0.8');
    const told = await Promise.all(Array.from({ length: 30 }, (_, i) => phone.answer(says(i % 3, i + 1))));
    expect(told.filter(({ status }) => status === 429).length).toBeGreaterThan(10);
    expect(told.find(({ status }) => status === 429)?.body['refused']).toMatch(/too fast/);
  });

  it('is refused what is too long, no JSON, of another origin or of another kind', async () => {
    const teacher = await opened();
    const { proof } = await joined(teacher, '127.3.0.9');
    const path = `${classAddress.answer}?code=${teacher.code}`;
    const told = async (sent: object) => (await send(site.address, path, { proof, ...sent })).status;
    expect(await told({ body: { ...says(1), padding: 'a'.repeat(17_000) } })).toBe(413);
    expect(await told({ body: '{' })).toBe(400);
    expect(await told({ body: says(1), headers: { origin: 'http://elsewhere.example' } })).toBe(403);
    expect(await told({ body: says(1), headers: { 'sec-fetch-site': 'cross-site' } })).toBe(403);
    expect(await told({ body: says(1), headers: { 'content-type': 'text/plain' } })).toBe(415);
    expect(await told({ body: { ...says(1), answer: { by: 'choice', option: '<b>' } } })).toBe(400);
    expect(await told({ body: says(7) })).toBe(409);
    expect((await send(site.address, `${classAddress.answer}?code=abc`, { proof, body: says(1) })).status).toBe(400);
  });

  it('can’t bring in a name with markup', async () => {
    const teacher = await opened();
    expect((await new Phone(site.address, teacher.code, '127.3.0.10').join('<script>')).status).toBe(400);
  });
});
