import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { classHandler } from '@/app/commands/class/class-handler';
import { ClassHall, MOST_CLASSES, MOST_PHONES } from '@/app/commands/class/class-hall';
import { serveSite } from '@/app/commands/serve/serve-site';
import { classAddress } from '@/lib/class/address';
import { IDLE_MS } from '@/lib/class/bounds';
import { after, type ClassEvent, type ClassState, type PhoneEvent } from '@/lib/class/class-state';
import { answersOf, spreadOf } from '@/lib/class/spread';
import { viewOf } from '@/lib/class/view';
import { choiceAsk } from '../class/asks';
import { newSecret, Phone, Teacher } from './class-client';
import { asking, classRoom, says } from './class-room';

const room = classRoom();
const { opened, joined } = room;

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
    const first = await serveSite(room.folder, 0, { handlers: [classHandler()] });
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

    const second = await serveSite(room.folder, 0, { handlers: [classHandler()] });
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
    const stranger = new Phone(room.address(), other.code, '127.2.0.4');
    Object.assign(stranger, { phone: phone.phone, token: phone.token });
    expect((await stranger.answer(says(1))).status).toBe(404);
    expect(JSON.stringify(hearsOther.heard)).not.toContain(phone.phone);
    hearsOne.cut();
    hearsOther.cut();
  });

  it('writes nothing to the disk', async () => {
    const phone = await joined(await opened(), '127.2.0.5');
    await phone.answer(says(1));
    expect(readdirSync(room.folder)).toEqual(['index.html']);
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
    expect((await new Phone(room.address(), teacher.code, '127.2.0.6').join()).body['refused']).toMatch(/no class/);
  });

  it('ends by itself after eight hours in which nothing was said', async () => {
    const teacher = await opened();
    room.aheadMs += IDLE_MS - 60_000;
    expect((await teacher.tell(classAddress.forget)).status).toBe(200);
    room.aheadMs += 2 * 60_000;
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
