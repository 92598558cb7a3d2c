// The page's side of the engine: questions go to a worker, answers come back as promises. A worker
// that is dropped in the middle of its work is started anew for the next question.

// The engine unpacked and compiled, in a worker that ends with it: the page is not to wait for that.
export function compileEngine(base64, workerCode) {
  const worker = new Worker(codeUrl(workerCode));
  return new Promise((resolve, reject) => {
    worker.onmessage = ({ data }) => (data.module ? resolve(data.module) : reject(new Error(data.fault)));
    worker.onerror = (event) => reject(new Error(event.message));
    worker.postMessage({ packed: base64.trim() });
  }).finally(() => worker.terminate());
}
const codeUrl = (code) => URL.createObjectURL(new Blob([code], { type: 'text/javascript' }));

export class Engine {
  #module;
  #url;
  #worker;
  #waiting = new Map();
  #last = 0;

  constructor(module, workerCode) {
    this.#module = module; // a promise
    this.#url = codeUrl(workerCode);
  }

  async #start() {
    const module = await this.#module;
    if (this.#worker) return;
    this.#worker = new Worker(this.#url);
    this.#worker.onmessage = ({ data }) => this.#settle(data);
    this.#worker.onerror = (event) => this.#fail(event.message);
    this.#worker.postMessage({ module });
  }

  #settle({ id, answer, fault }) {
    const waiting = this.#waiting.get(id);
    this.#waiting.delete(id);
    if (!waiting) return;
    if (answer !== undefined) waiting.resolve(JSON.parse(answer));
    else {
      waiting.reject(new Error(fault));
      this.drop(); // what broke in the middle may be broken for good
    }
  }

  #fail(message) {
    const waiting = [...this.#waiting.values()];
    this.drop();
    for (const { reject } of waiting) reject(new Error(message));
  }

  async ask(question) {
    await this.#start();
    const id = ++this.#last;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject });
      this.#worker.postMessage({ id, question: JSON.stringify(question) });
    });
  }

  // Ends whatever is being worked out; those who wait for it are told `dropped`.
  drop() {
    this.#worker?.terminate();
    this.#worker = undefined;
    for (const { reject } of this.#waiting.values()) reject(new DOMException('dropped', 'AbortError'));
    this.#waiting.clear();
  }

  get busy() {
    return this.#waiting.size > 0;
  }
}
