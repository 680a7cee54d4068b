/** Reads an open answer of server-sent events until it ends. `onAlive` hears of every sign of life, words or none. */
export async function readEvents(
  { body }: Response,
  onEvent: (event: string, data: unknown) => void,
  onAlive: () => void,
): Promise<void> {
  const reader = body!.getReader();
  const decoder = new TextDecoder();
  let text = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    onAlive();
    text += decoder.decode(value, { stream: true });
    const parts = text.split('\n\n');
    text = parts.pop()!;
    for (const part of parts) {
      const event = /^event: (.*)$/m.exec(part)?.[1];
      const data = /^data: (.*)$/m.exec(part)?.[1];
      if (event !== undefined && data !== undefined) onEvent(event, JSON.parse(data));
    }
  }
}
