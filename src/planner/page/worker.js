// The engine in a thread of its own: one message a question, one an answer, as JSON in bytes.
import engine from 'slabtide-engine';
import { decompress } from 'lzma1';

let ready;

function load(module) {
  return engine({
    instantiateWasm(imports, receive) {
      WebAssembly.instantiate(module, imports).then((instance) => receive(instance, module));
      return {};
    },
  });
}

function ask(exports, question) {
  const bytes = new TextEncoder().encode(question);
  const at = exports._slabtide_request(bytes.length);
  exports.HEAPU8.set(bytes, at);
  const size = exports._slabtide_answer();
  const from = exports._slabtide_answer_text();
  return new TextDecoder().decode(exports.HEAPU8.subarray(from, from + size));
}

// For the page to give to its workers.
async function compile(base64) {
  const module = await WebAssembly.compile(decompress(Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))));
  self.postMessage({ module });
}

self.onmessage = async ({ data }) => {
  if (data.packed) {
    await compile(data.packed).catch((error) => self.postMessage({ fault: String(error.message ?? error) }));
    return;
  }
  if (data.module) {
    ready = load(data.module);
    return;
  }
  try {
    self.postMessage({ id: data.id, answer: ask(await ready, data.question) });
  } catch (error) {
    self.postMessage({ id: data.id, fault: String(error) });
  }
};
