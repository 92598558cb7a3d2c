// How a job leaves the page and comes in: files, the phone's share sheet, a link, a backup.

import { nameOf } from './answers';
import type { Forecast } from './job';

export const safeName = (name: string) => name.normalize('NFKD').replace(/[^A-Za-z0-9]+/g, '-').replace(/^-+|-+$/g, '').slice(0, 40).toLowerCase() || 'pour';

export function download(name: string, type: string, text: string) {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60000);
}

// By the phone's share sheet where it takes such files, else as a download. False where the person
// thought better of it.
export async function give(name: string, type: string, text: string): Promise<boolean> {
  const file = new File([text], name, { type });
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file], title: name });
      return true;
    } catch (error) {
      if (nameOf(error) === 'AbortError') return false;
    }
  }
  download(name, type, text);
  return true;
}

async function through(stream: CompressionStream, bytes: Uint8Array<ArrayBuffer>) {
  const reply = new Response(new Blob([bytes]).stream().pipeThrough(stream));
  return new Uint8Array(await reply.arrayBuffer());
}

const mark = '#job=';
const longestLink = 200000;
const largestJob = 1024 * 1024;

export async function linkOf(text: string): Promise<string> {
  const packed = await through(new CompressionStream('deflate-raw'), new TextEncoder().encode(text));
  let letters = '';
  for (const byte of packed) letters += String.fromCharCode(byte);
  const base = location.href.split('#')[0];
  return base + mark + btoa(letters).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

// The job's text in a link's end. Throws for one that is damaged or that would unpack to more than a
// job may be.
export async function textInLink(hash: string): Promise<string> {
  if (hash.length > longestLink) throw new Error('the link is too long');
  const letters = atob(hash.slice(mark.length).replaceAll('-', '+').replaceAll('_', '/'));
  const reader = new Blob([Uint8Array.from(letters, (letter) => letter.charCodeAt(0))]).stream()
    .pipeThrough(new DecompressionStream('deflate-raw')).getReader();
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let text = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return text + decoder.decode();
    text += decoder.decode(value, { stream: true });
    if (text.length > largestJob) {
      reader.cancel();
      throw new Error('the job in the link is too large');
    }
  }
}

const backupKind = 'slabtide planner backup';
// Of each job what it is made again from.
export interface BackedUp {
  text: string;
  journal: string;
  turn: number;
  forecast: Forecast | null;
}
export const backupOf = (jobs: BackedUp[], book: string) => JSON.stringify({ kind: backupKind, version: 1, jobs, book }, null, 1);

const textOr = (value: unknown) => (typeof value === 'string' ? value : '');
// What a file says is there, of whatever kind it be.
type Loose<Kind> = { [Key in keyof Kind]?: unknown } | null | undefined;
const forecastIn = (told: Loose<Forecast>): Forecast | null =>
  (typeof told?.text === 'string' ? { text: told.text, from: textOr(told.from), at: Number(told.at) || 0 } : null);
const largestBackup = 32 * 1024 * 1024;

// The job texts, journals and forecasts of a backup, and the mix book; all are read by the engine
// afterwards.
export function inBackup(text: string): { jobs: BackedUp[]; book: string } {
  if (text.length > largestBackup) throw new Error('it is larger than any backup');
  const backup: { kind?: unknown; jobs?: unknown; book?: unknown } | null = JSON.parse(text);
  if (backup?.kind !== backupKind || !Array.isArray(backup.jobs)) throw new Error('it is no backup of this planner');
  const jobs = backup.jobs.slice(0, 2000).map((job: Loose<BackedUp>) => ({
    text: textOr(job?.text),
    journal: textOr(job?.journal),
    turn: typeof job?.turn === 'number' && Number.isFinite(job.turn) ? job.turn : 0,
    forecast: forecastIn(job?.forecast as Loose<Forecast>),
  }));
  return { jobs, book: textOr(backup.book) };
}
