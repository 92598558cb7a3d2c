// The page's side of the engine: questions go to a worker, answers come back as promises. A worker
// that is dropped in the middle of its work is started anew for the next question.

import type { Answer, Question, Word } from './answers';
import type { FromWorker, ToWorker } from './messages';

// The engine unpacked and compiled, in a worker that ends with it: the page is not to wait for that.
export function compileEngine(base64: string, workerCode: string): Promise<WebAssembly.Module> {
  const worker = new Worker(codeUrl(workerCode));
  return new Promise<WebAssembly.Module>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => ('module' in data ? resolve(data.module) : reject(new Error('fault' in data ? data.fault : '')));
    worker.onerror = (event) => reject(new Error(event.message));
    tell(worker, { packed: base64.trim() });
  }).finally(() => worker.terminate());
}
const tell = (worker: Worker, message: ToWorker) => worker.postMessage(message);
const codeUrl = (code: string) => URL.createObjectURL(new Blob([code], { type: 'text/javascript' }));

interface Waiting {
  resolve(answer: string): void;
  reject(error: Error): void;
}

export class Engine {
  #module: Promise<WebAssembly.Module>;
  #url: string;
  #worker: Worker | undefined;
  #waiting = new Map<number, Waiting>();
  #last = 0;

  constructor(module: Promise<WebAssembly.Module>, workerCode: string) {
    this.#module = module;
    this.#url = codeUrl(workerCode);
  }

  async #start(): Promise<Worker> {
    const module = await this.#module;
    if (this.#worker) return this.#worker;
    const worker = new Worker(this.#url);
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => this.#settle(data);
    worker.onerror = (event) => this.#fail(event.message);
    tell(worker, { module });
    this.#worker = worker;
    return worker;
  }

  #settle(told: FromWorker) {
    if (!('id' in told)) return;
    const waiting = this.#waiting.get(told.id);
    this.#waiting.delete(told.id);
    if (!waiting) return;
    if ('answer' in told) waiting.resolve(told.answer);
    else {
      waiting.reject(new Error(told.fault));
      this.drop(); // what broke in the middle may be broken for good
    }
  }

  #fail(message: string) {
    const waiting = [...this.#waiting.values()];
    this.drop();
    for (const { reject } of waiting) reject(new Error(message));
  }

  async ask<W extends Word>(question: Question<W>): Promise<Answer<W>> {
    const worker = await this.#start();
    const id = ++this.#last;
    const text = await new Promise<string>((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject });
      tell(worker, { id, question: JSON.stringify(question) });
    });
    return JSON.parse(text) as Answer<W>;
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
