import type { IncomingMessage, ServerResponse } from 'node:http';
import { byteRange } from './byte-range';
import type { SiteFile } from '../site/site-files';

/**
 * Answers GET or HEAD with a file of the site: not modified, a part of it, or all of it, compressed where the asker
 * takes that and asks for no part.
 */
export async function sendFile(
  { method, headers }: IncomingMessage,
  response: ServerResponse,
  file: SiteFile,
  statusCode = 200,
): Promise<void> {
  const whole = statusCode === 200;
  const tag = `"${file.tag}"`;
  response.setHeader('content-type', file.type);
  response.setHeader('cache-control', whole ? file.keptFor : 'no-store');
  if (whole) {
    response.setHeader('accept-ranges', 'bytes');
    const known = headers['if-none-match'];
    if (known !== undefined && (known.trim() === '*' || known.includes(tag) || known.includes(packedTag(file)))) {
      response.setHeader('etag', tag);
      response.writeHead(304).end();
      return;
    }
    const unchanged = headers['if-range'] === undefined || headers['if-range'] === tag;
    const range = method === 'GET' && unchanged ? byteRange(headers.range, file.body.length) : 'none';
    if (range === 'beyond') {
      response.setHeader('content-range', `bytes */${file.body.length}`);
      end(response, 416, Buffer.from('The file has no such part.\n'), method);
      return;
    }
    if (range !== 'none') {
      response.setHeader('etag', tag);
      response.setHeader('content-range', `bytes ${range.from}-${range.to}/${file.body.length}`);
      end(response, 206, file.body.subarray(range.from, range.to + 1), method);
      return;
    }
  }
  const packed = takesGzip(headers['accept-encoding']) ? await file.packed() : undefined;
  if (packed) response.setHeader('content-encoding', 'gzip');
  if (whole) response.setHeader('etag', packed ? packedTag(file) : tag);
  end(response, statusCode, packed ?? file.body, method);
}

/** Compressed, a file is another representation of the same, and has a tag of its own. */
const packedTag = ({ tag }: SiteFile) => `"${tag}-gz"`;

function takesGzip(accepted: string | string[] | undefined): boolean {
  return String(accepted ?? '')
    .split(',')
    .some((one) => /^\s*(gzip|\*)\s*(;\s*q=(1|0?\.\d*[1-9]\d*))?\s*$/i.test(one));
}

function end(response: ServerResponse, statusCode: number, body: Buffer, method: string | undefined): void {
  response.writeHead(statusCode, { 'content-length': body.length });
  response.end(method === 'HEAD' ? undefined : body);
}
