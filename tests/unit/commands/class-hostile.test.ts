import { describe, expect, it } from 'vitest';
import { classAddress } from '@/lib/class/address';
import { after, EMPTY_CLASS } from '@/lib/class/class-state';
import { viewOf } from '@/lib/class/view';
import { line, newSecret, Phone, send } from './class-client';
import { asking, classRoom, says } from './class-room';

const room = classRoom();
const { opened, joined } = room;

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
        expect((await send(room.address(), `${path}?code=${teacher.code}`, { ...asked, proof })).status).toBe(404);
    }
    const listens = await line(room.address(), `${classAddress.hear}?code=${teacher.code}`, phone.proof);
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
    const forged = new Phone(room.address(), teacher.code, '127.3.0.3');
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
    for (let i = 0; i < 14; i += 1)
      guesses.push((await new Phone(room.address(), 'ZZZZZ2', '127.3.0.6').join()).status);
    expect(guesses).toContain(404);
    expect(guesses.at(-1)).toBe(429);
    expect((await new Phone(room.address(), teacher.code, '127.3.0.6').join()).status).toBe(429);
    expect((await new Phone(room.address(), teacher.code, '127.3.0.7').join()).status).toBe(200);
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
    const told = async (sent: object) => (await send(room.address(), path, { proof, ...sent })).status;
    expect(await told({ body: { ...says(1), padding: 'a'.repeat(17_000) } })).toBe(413);
    expect(await told({ body: '{' })).toBe(400);
    expect(await told({ body: says(1), headers: { origin: 'http://elsewhere.example' } })).toBe(403);
    expect(await told({ body: says(1), headers: { 'sec-fetch-site': 'cross-site' } })).toBe(403);
    expect(await told({ body: says(1), headers: { 'content-type': 'text/plain' } })).toBe(415);
    expect(await told({ body: { ...says(1), answer: { by: 'choice', option: '<b>' } } })).toBe(400);
    expect(await told({ body: says(7) })).toBe(409);
    expect((await send(room.address(), `${classAddress.answer}?code=abc`, { proof, body: says(1) })).status).toBe(400);
  });

  it('can’t bring in a name with markup', async () => {
    const teacher = await opened();
    expect((await new Phone(room.address(), teacher.code, '127.3.0.10').join('<script>')).status).toBe(400);
  });
});
