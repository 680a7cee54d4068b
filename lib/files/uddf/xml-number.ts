const XML_DOUBLE = /^[-+]?(\d+(\.\d*)?|\.\d+)([eE][-+]?\d{1,4})?$/;

/** A number as XML writes one (xs:double, without the infinities); NaN for anything else, a decimal comma included. */
export function xmlNumber(text: string): number {
  const plain = text.trim();
  return XML_DOUBLE.test(plain) ? Number(plain) + 0 : NaN;
}
