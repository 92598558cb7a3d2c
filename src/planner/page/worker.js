// The engine in a thread of its own: one message a question, one an answer, as JSON in bytes.
import engine from 'slabtide-engine';

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

self.onmessage = async ({ data }) => {
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
