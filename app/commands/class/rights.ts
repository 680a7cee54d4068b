import { createHmac, randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { CODE_LENGTH, CODE_LETTERS } from '@/lib/class/code';

/*
 * Nothing of a class is written down here, so what proves a right has to follow from the teacher's secret alone: a server
 * that was stopped and started again knows everyone again once the teacher's page is back.
 */

/**
 * The code of a class, from its teacher's secret. It takes long enough to work out that nobody finds a secret that fits
 * another's code (scrypt, RFC 7914).
 */
export function codeOf(secret: string): Promise<string> {
  return new Promise((resolve, reject) => {
    scrypt(secret, 'halftime class code', 8, (error, key) => {
      if (error) return reject(error);
      let number = key.readBigUInt64BE();
      const letters = BigInt(CODE_LETTERS.length);
      let code = '';
      for (let i = 0; i < CODE_LENGTH; i += 1) {
        code += CODE_LETTERS[Number(number % letters)];
        number /= letters;
      }
      resolve(code);
    });
  });
}

/** A name for a phone, told to nobody but the phone and the teacher. */
export function newPhone(): string {
  return randomBytes(9).toString('base64url');
}

/** What a phone proves itself with (HMAC, RFC 2104): it can't be made without the teacher's secret. */
export function tokenOf(secret: string, phone: string): string {
  return createHmac('sha256', secret).update(`phone ${phone}`).digest('base64url');
}

/** Whether two secrets are one, told in the same time whichever letter differs. */
export function isSame(one: string, other: string): boolean {
  const [a, b] = [one, other].map((text) => createHmac('sha256', 'compare').update(text).digest());
  return timingSafeEqual(a!, b!);
}
