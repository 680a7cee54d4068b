import type { IncomingMessage, ServerResponse } from 'node:http';
import * as z from 'zod';
import { joinSchema, nameSchema, phoneId, codeText, sentAnswerSchema } from '@/lib/class/answer';
import { MOST_SENT_BYTES } from '@/lib/class/bounds';
import { classAddress } from '@/lib/class/address';
import { MOST_VIEW_BYTES, viewSchema } from '@/lib/class/view';
import { cameFrom, isLoopback } from '../serve/network-addresses';
import { isOfThisMachine } from '../serve/network-switch';
import type { RequestHandler } from '../serve/request-handler';
import { allowance } from './allowance';
import { ClassHall, Refusal, type OpenClass } from './class-hall';
import { classNetwork } from './class-network';
import { eventStream } from './event-stream';
import { codeOf, isSame, newPhone, tokenOf } from './rights';

const secretText = z.string().regex(/^[A-Za-z0-9_-]{32,64}$/);
const pointSchema = z.strictObject({ atS: z.number().min(0).max(1e7) });
const bornText = z.string().max(40);

/** Classes one machine of the network may open anew, at once and per second after; the server's own machine is not counted. */
const OPENED = { most: 5, perSecond: 1 / 30 };
/** Codes and proofs that did not fit, from one machine. */
const GUESSED = { most: 12, perSecond: 1 / 6 };
/** Phones that join from one address. */
const JOINED = { most: 60, perSecond: 2 };
/** Answers of one phone, and the times it comes for its line. */
const ANSWERED = { most: 12, perSecond: 2 };
const HELD = { most: 12, perSecond: 1 / 2 };
/** How often it is looked whether a class has been idle for too long, ms. */
const SWEEP_MS = 60_000;

interface Asked {
  readonly request: IncomingMessage;
  readonly response: ServerResponse;
  readonly url: URL;
  readonly from: string;
}

/**
 * Answers what a class together asks of the server: see `classAddress` for what is asked of where. Phones and teachers
 * prove themselves in the Authorization field, which no page of another origin can send unasked.
 */
export function classHandler(hall = new ClassHall(), now: () => number = Date.now): RequestHandler {
  const opened = allowance(OPENED.most, OPENED.perSecond);
  const guessed = allowance(GUESSED.most, GUESSED.perSecond);
  const joined = allowance(JOINED.most, JOINED.perSecond);
  const answered = allowance(ANSWERED.most, ANSWERED.perSecond);
  const held = allowance(HELD.most, HELD.perSecond);

  const network = classNetwork(() => hall.count());
  hall.onOver = network.over;

  const tooFast = () => new Refusal(429, 'That was too fast after the last; wait a few seconds.');

  /** The class with a code that was typed; codes that fit none are counted against whoever sends them. */
  function classWith(code: string, { from }: Asked): OpenClass {
    if (!guessed.has(from, now()))
      throw new Refusal(429, 'Too many codes that fit no class; wait a minute, then try again.');
    const one = hall.get(code);
    if (one) return one;
    guessed.take(from, now());
    throw new Refusal(
      404,
      'There is no class with this code. Look at the code on the wall again, and whether the class is over.',
    );
  }

  /**
   * The class someone proves to belong to. That there is none and that the proof does not fit are one answer, so that nobody
   * learns codes by it. Proofs are too long to be guessed and are not counted: phones whose class is not back yet ask often.
   */
  function classOf({ url }: Asked, fits: (one: OpenClass) => boolean): OpenClass {
    const code = codeText.safeParse(url.searchParams.get('code'));
    if (!code.success) throw new Refusal(400, 'A class has a code of six letters and digits.');
    const one = hall.get(code.data);
    if (!one || !fits(one))
      throw new Refusal(404, 'There is no class here to which this page belongs; join by the code on the wall.');
    return one;
  }

  function teacherOf(asked: Asked): OpenClass {
    const secret = proofOf(asked.request, 'Teacher');
    return classOf(asked, (one) => secret !== undefined && isSame(secret, one.secret));
  }

  function phoneOf(asked: Asked): { readonly one: OpenClass; readonly phone: string } {
    const [phone = '', token = ''] = proofOf(asked.request, 'Phone')?.split('.') ?? [];
    const one = classOf(
      asked,
      ({ secret }) => phoneId.safeParse(phone).success && isSame(token, tokenOf(secret, phone)),
    );
    return { one, phone };
  }

  const doings: Readonly<Record<string, { readonly method: 'GET' | 'POST'; readonly run: (asked: Asked) => unknown }>> =
    {
      [classAddress.open]: {
        method: 'POST',
        async run(asked) {
          const secret = secretText.safeParse(proofOf(asked.request, 'Teacher'));
          if (!secret.success) throw new Refusal(400, 'A class is opened with a secret of its own; reload the page.');
          await bodyOf(asked.request, MOST_SENT_BYTES);
          if (!isLoopback(asked.from) && !opened.take(asked.from, now())) throw tooFast();
          const code = await codeOf(secret.data);
          const there = hall.get(code);
          if (!there) hall.open(code, secret.data);
          else if (!isSame(there.secret, secret.data))
            throw new Refusal(409, 'Another class has this code; open yours anew.');
          if (isOfThisMachine(asked.request)) await network.open();
          return { code };
        },
      },
      [classAddress.hear]: {
        method: 'GET',
        run(asked) {
          const one = teacherOf(asked);
          const born = bornText.catch('').parse(asked.url.searchParams.get('born'));
          const since = Number(asked.url.searchParams.get('since')) || 0;
          hall.heard(one);
          const stream = eventStream(asked.response, () => hall.leave(one, stream));
          hall.hear(one, stream, born, since);
          return STREAMED;
        },
      },
      [classAddress.show]: {
        method: 'POST',
        async run(asked) {
          const one = teacherOf(asked);
          const view = checked(viewSchema, await bodyOf(asked.request, MOST_VIEW_BYTES));
          hall.heard(one);
          hall.show(one, view);
          return {};
        },
      },
      [classAddress.point]: {
        method: 'POST',
        async run(asked) {
          const one = teacherOf(asked);
          hall.point(one, checked(pointSchema, await bodyOf(asked.request, MOST_SENT_BYTES)).atS);
          return {};
        },
      },
      [classAddress.forget]: {
        method: 'POST',
        async run(asked) {
          const one = teacherOf(asked);
          await bodyOf(asked.request, MOST_SENT_BYTES);
          hall.forget(one);
          return {};
        },
      },
      [classAddress.end]: {
        method: 'POST',
        async run(asked) {
          const one = teacherOf(asked);
          await bodyOf(asked.request, MOST_SENT_BYTES);
          hall.end(one);
          return {};
        },
      },
      [classAddress.join]: {
        method: 'POST',
        async run(asked) {
          const { code, name } = checked(joinSchema, await bodyOf(asked.request, MOST_SENT_BYTES));
          const one = classWith(code, asked);
          if (!joined.take(asked.from, now())) throw tooFast();
          // One that was here before stays the same phone.
          const [before = '', token = ''] = proofOf(asked.request, 'Phone')?.split('.') ?? [];
          const known = phoneId.safeParse(before).success && isSame(token, tokenOf(one.secret, before));
          const phone = known ? before : newPhone();
          hall.join(one, phone, checked(nameSchema, name));
          hall.heard(one);
          return { phone, token: tokenOf(one.secret, phone) };
        },
      },
      [classAddress.hold]: {
        method: 'GET',
        run(asked) {
          const { one, phone } = phoneOf(asked);
          if (!held.take(phone, now())) throw tooFast();
          const stream = eventStream(asked.response, () => hall.letGo(one, phone, stream));
          hall.hold(one, phone, stream);
          return STREAMED;
        },
      },
      [classAddress.answer]: {
        method: 'POST',
        async run(asked) {
          const { one, phone } = phoneOf(asked);
          if (!answered.take(phone, now())) throw tooFast();
          hall.answer(one, phone, checked(sentAnswerSchema, await bodyOf(asked.request, MOST_SENT_BYTES)));
          hall.heard(one);
          return {};
        },
      },
    };

  return {
    path: classAddress.all,
    methods: ['GET', 'POST'],
    begin(one) {
      network.begin(one);
      setInterval(() => hall.sweep(), SWEEP_MS).unref();
    },
    async handle(request, response, url) {
      try {
        const doing = Object.hasOwn(doings, url.pathname) ? doings[url.pathname] : undefined;
        if (!doing) throw new Refusal(404, 'There is nothing at this address.');
        if (doing.method !== request.method) throw new Refusal(405, `This address answers ${doing.method} alone.`);
        refuseStrangers(request);
        const told = await doing.run({ request, response, url, from: cameFrom(request) });
        if (told !== STREAMED) answerJson(response, 200, told as object);
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        // What it may still be sending is not waited for.
        if (!request.complete) response.setHeader('connection', 'close');
        if (!response.headersSent) answerJson(response, error.status, { refused: error.message });
      }
    },
  };
}

const STREAMED = Symbol('the answer stays open');

/** A page of another origin may neither ask nor send: its browser names it. */
function refuseStrangers({ headers, method }: IncomingMessage): void {
  const { origin, host = '' } = headers;
  const site = headers['sec-fetch-site'];
  const strange =
    (origin !== undefined && (!URL.canParse(origin) || new URL(origin).host !== host)) ||
    (site !== undefined && site !== 'same-origin' && site !== 'none');
  if (strange) throw new Refusal(403, 'Only a page of this server itself may ask for that.');
  if (method === 'POST' && !/^application\/json\s*(;|$)/i.test(headers['content-type'] ?? ''))
    throw new Refusal(415, 'What is sent has to be JSON.');
}

/** What someone proves themselves with, of one kind. */
function proofOf({ headers }: IncomingMessage, kind: 'Teacher' | 'Phone'): string | undefined {
  const [name, proof] = (headers.authorization ?? '').split(' ');
  return name === kind && proof !== undefined && proof.length <= 200 ? proof : undefined;
}

async function bodyOf(request: IncomingMessage, mostBytes: number): Promise<unknown> {
  const tooLong = () => new Refusal(413, `That is longer than the ${Math.round(mostBytes / 1024)} kB that are taken.`);
  if (Number(request.headers['content-length'] ?? 0) > mostBytes) throw tooLong();
  const pieces: Buffer[] = [];
  let bytes = 0;
  for await (const piece of request as AsyncIterable<Buffer>) {
    bytes += piece.length;
    if (bytes > mostBytes) throw tooLong();
    pieces.push(piece);
  }
  try {
    return JSON.parse(Buffer.concat(pieces).toString('utf8'));
  } catch {
    throw new Refusal(400, 'What was sent is no JSON; reload the page.');
  }
}

function checked<T>(schema: z.ZodType<T>, sent: unknown): T {
  const read = schema.safeParse(sent);
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  const where = issue?.path.map(String).join('.') || 'what was sent';
  throw new Refusal(400, `${where.slice(0, 80)} is not as it has to be; reload the page.`);
}

function answerJson(response: ServerResponse, statusCode: number, told: object): void {
  const body = JSON.stringify(told);
  response.writeHead(statusCode, {
    'content-type': 'application/json; charset=utf-8',
    'cache-control': 'no-store',
    'content-length': Buffer.byteLength(body),
    ...(statusCode === 429 ? { 'retry-after': '3' } : {}),
  });
  response.end(body);
}
