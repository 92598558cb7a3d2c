// What is asked of others over the network: nothing but what the person asks for, when they ask.

const patience = 20000; // ms
const largest = 8 * 1024 * 1024; // what the engine reads

import { nameOf, reasonOf } from './answers';

// The answer as text. `missing` is said where the service knows no such thing.
export async function getText(url: string, missing: string): Promise<string> {
  const reply = await fetch(url, {
    credentials: 'omit', referrerPolicy: 'no-referrer', cache: 'no-store', signal: AbortSignal.timeout(patience),
  });
  if (!reply.ok) throw new Error(reply.status === 404 ? missing : `it answers with status ${reply.status}`);
  const text = await reply.text();
  if (text.length > largest) throw new Error('its answer is too long');
  JSON.parse(text); // throws where it is none: the sign-in page of a network, as a rule
  return text;
}

const known: Record<string, string> = {
  TypeError: 'the network does not answer', TimeoutError: 'it took too long', SyntaxError: 'the answer could not be read',
};
export function whyNot(error: unknown): string {
  return known[nameOf(error)] ?? reasonOf(error);
}
