import { request, type ClientRequest, type IncomingMessage } from 'node:http';
import { randomBytes } from 'node:crypto';
import { classAddress } from '@/lib/class/address';
import type { SentAnswer } from '@/lib/class/answer';

/* A teacher's page and phones without a browser, each able to come from an address of its own (127.0.0.0/8, RFC 1122). */

export interface Told {
  readonly status: number;
  readonly body: { readonly [field: string]: unknown };
}

interface Sent {
  readonly method?: 'GET' | 'POST';
  readonly proof?: string | undefined;
  readonly body?: unknown;
  readonly from?: string | undefined;
  readonly headers?: Readonly<Record<string, string>>;
}

export function send(site: string, path: string, { method = 'POST', proof, body, from, headers }: Sent): Promise<Told> {
  return new Promise((resolve, reject) => {
    const asked = request(
      `${site}${path}`,
      {
        method,
        ...(from !== undefined && { localAddress: from }),
        headers: {
          ...(method === 'POST' && { 'content-type': 'application/json' }),
          ...(proof !== undefined && { authorization: proof }),
          ...headers,
        },
      },
      (response) => {
        let text = '';
        response.setEncoding('utf8');
        response.on('data', (piece: string) => (text += piece));
        response.on('end', () => {
          const json = /json/.test(response.headers['content-type'] ?? '');
          resolve({ status: response.statusCode!, body: json ? (JSON.parse(text) as Told['body']) : {} });
        });
        response.on('error', reject);
      },
    );
    asked.on('error', reject);
    asked.end(method === 'POST' ? (typeof body === 'string' ? body : JSON.stringify(body ?? {})) : undefined);
  });
}

export interface Line {
  readonly status: number;
  readonly heard: { readonly event: string; readonly data: never }[];
  /** Waits until something was heard. */
  readonly until: (fits: (event: string, data: never) => boolean) => Promise<never>;
  readonly cut: () => void;
  readonly ended: Promise<void>;
}

/** Opens a stream and reads it. */
export function line(
  site: string,
  path: string,
  proof: string,
  { from, onEvent }: { from?: string; onEvent?: (event: string, data: never) => void } = {},
): Promise<Line> {
  return new Promise((resolve, reject) => {
    const heard: Line['heard'] = [];
    const waiting = new Set<() => void>();
    const asked: ClientRequest = request(
      `${site}${path}`,
      { headers: { authorization: proof }, agent: false, ...(from !== undefined && { localAddress: from }) },
      (response: IncomingMessage) => {
        let text = '';
        response.setEncoding('utf8');
        response.on('data', (piece: string) => {
          text += piece;
          const parts = text.split('\n\n');
          text = parts.pop()!;
          for (const part of parts) {
            const event = /^event: (.*)$/m.exec(part)?.[1];
            const data = /^data: (.*)$/m.exec(part)?.[1];
            if (event === undefined || data === undefined) continue;
            const one = { event, data: JSON.parse(data) as never };
            heard.push(one);
            onEvent?.(one.event, one.data);
          }
          for (const look of waiting) look();
        });
        const ended = new Promise<void>((over) => {
          response.on('close', () => over());
          response.on('error', () => over());
        });
        resolve({
          status: response.statusCode!,
          heard,
          ended,
          cut: () => asked.destroy(),
          until: (fits) =>
            new Promise((found, late) => {
              const giveUp = setTimeout(() => late(new Error(`not heard: ${JSON.stringify(heard)}`)), 5000);
              const look = () => {
                const one = heard.find(({ event, data }) => fits(event, data));
                if (!one) return;
                clearTimeout(giveUp);
                waiting.delete(look);
                found(one.data);
              };
              waiting.add(look);
              look();
            }),
        });
      },
    );
    asked.on('error', reject);
    asked.end();
  });
}

export const newSecret = () => randomBytes(24).toString('base64url');

export class Teacher {
  code = '';
  constructor(
    readonly site: string,
    readonly secret = newSecret(),
    readonly from?: string,
  ) {}
  get proof() {
    return `Teacher ${this.secret}`;
  }
  async open(): Promise<Told> {
    const told = await send(this.site, classAddress.open, { proof: this.proof, from: this.from });
    this.code = String(told.body['code']);
    return told;
  }
  tell(path: string, body: unknown = {}): Promise<Told> {
    return send(this.site, `${path}?code=${this.code}`, { proof: this.proof, body });
  }
  hear(born = '', since = 0, onEvent?: (event: string, data: never) => void): Promise<Line> {
    return line(this.site, `${classAddress.hear}?code=${this.code}&born=${born}&since=${since}`, this.proof, {
      ...(onEvent && { onEvent }),
    });
  }
}

export class Phone {
  phone = '';
  token = '';
  constructor(
    readonly site: string,
    readonly code: string,
    readonly from?: string,
  ) {}
  get proof() {
    return `Phone ${this.phone}.${this.token}`;
  }
  async join(name = ''): Promise<Told> {
    const told = await send(this.site, classAddress.join, {
      body: { code: this.code, name },
      from: this.from,
      proof: this.phone === '' ? undefined : this.proof,
    });
    if (told.status === 200) {
      this.phone = String(told.body['phone']);
      this.token = String(told.body['token']);
    }
    return told;
  }
  hold(site = this.site): Promise<Line> {
    return line(site, `${classAddress.hold}?code=${this.code}`, this.proof, {
      ...(this.from !== undefined && { from: this.from }),
    });
  }
  answer(sent: SentAnswer, site = this.site): Promise<Told> {
    return send(site, `${classAddress.answer}?code=${this.code}`, { proof: this.proof, body: sent, from: this.from });
  }
}
