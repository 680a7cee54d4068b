import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect } from 'vitest';
import { classHandler } from '@/app/commands/class/class-handler';
import { ClassHall } from '@/app/commands/class/class-hall';
import { serveSite, type RunningSite } from '@/app/commands/serve/serve-site';
import { classAddress } from '@/lib/class/address';
import { after, EMPTY_CLASS } from '@/lib/class/class-state';
import { viewOf } from '@/lib/class/view';
import { choiceAsk, choiceTruth } from '../class/asks';
import { newSecret, Phone, Teacher } from './class-client';

/** A class before which a question stands. */
export const asking = after(EMPTY_CLASS, { kind: 'asked', ask: choiceAsk, truth: choiceTruth });
export const says = (option: number, nth = 1) => ({
  ask: 'a1',
  round: 0,
  nth,
  answer: { by: 'choice' as const, option },
});

/** A server of its own for the tests of one file, whose clock may be put on. */
export function classRoom() {
  let site: RunningSite;
  const room = {
    folder: '',
    aheadMs: 0,
    address: () => site.address,
    /** A class with a question before it. */
    async opened() {
      const teacher = new Teacher(site.address, newSecret());
      expect((await teacher.open()).status).toBe(200);
      expect((await teacher.tell(classAddress.show, viewOf(asking, 1))).status).toBe(200);
      return teacher;
    },
    async joined({ code }: Teacher, address: string) {
      const phone = new Phone(site.address, code, address);
      expect((await phone.join()).status).toBe(200);
      return phone;
    },
  };
  beforeAll(async () => {
    room.folder = mkdtempSync(join(tmpdir(), 'halftime-class-'));
    writeFileSync(join(room.folder, 'index.html'), 'The front page');
    const now = () => Date.now() + room.aheadMs;
    site = await serveSite(room.folder, 0, { handlers: [classHandler(new ClassHall(now), now)] });
  });
  afterAll(async () => {
    await site.close();
    rmSync(room.folder, { recursive: true });
  });
  return room;
}
