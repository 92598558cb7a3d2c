// The engine in a thread of its own: one message a question, one an answer, as JSON in bytes.
import engine, { type Exports } from 'slabtide-engine';
import { decompress } from 'lzma1';
import { reasonOf } from './answers';
import type { FromWorker, ToWorker } from './messages';

let ready: Promise<Exports> | undefined;
const tell = (message: FromWorker) => self.postMessage(message);

function load(module: WebAssembly.Module) {
  return engine({
    instantiateWasm(imports, receive) {
      WebAssembly.instantiate(module, imports).then((instance) => receive(instance, module));
      return {};
    },
  });
}

function ask(exports: Exports, question: string) {
  const bytes = new TextEncoder().encode(question);
  const at = exports._slabtide_request(bytes.length);
  exports.HEAPU8.set(bytes, at);
  const size = exports._slabtide_answer();
  const from = exports._slabtide_answer_text();
  return new TextDecoder().decode(exports.HEAPU8.subarray(from, from + size));
}

// For the page to give to its workers.
async function compile(base64: string) {
  const module = await WebAssembly.compile(decompress(Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))));
  tell({ module });
}

self.onmessage = async ({ data }: MessageEvent<ToWorker>) => {
  if ('packed' in data) {
    await compile(data.packed).catch((error: unknown) => tell({ fault: reasonOf(error) }));
  } else if ('module' in data) {
    ready = load(data.module);
  } else {
    try {
      if (!ready) throw new Error('no engine');
      tell({ id: data.id, answer: ask(await ready, data.question) });
    } catch (error) {
      tell({ id: data.id, fault: String(error) });
    }
  }
};
