// Jobs kept on this device, in the browser's own database. Where there is none (a private window),
// they live as long as the page, and the page says so.

const name = 'slabtide-planner';
const table = 'jobs';
const bookId = 'mix-book'; // beside the jobs, so that a device with an older page need not be changed

const done = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

function open() {
  const request = indexedDB.open(name, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(table, { keyPath: 'id' });
  return done(request);
}

export const newId = () =>
  [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, '0')).join('');

export class Store {
  #database;
  #memory = new Map();
  lasting = true;
  fault = '';

  async start() {
    try {
      this.#database = await open();
      navigator.storage?.persist?.().catch(() => {});
    } catch {
      this.lasting = false;
    }
    return this;
  }

  #table(mode) {
    return this.#database.transaction(table, mode).objectStore(table);
  }

  async all() {
    const rows = this.lasting ? await done(this.#table('readonly').getAll()) : [...this.#memory.values()];
    return rows.filter((row) => row.id !== bookId).sort((a, b) => b.changed - a.changed);
  }

  // Keeps the job, and gives its id: a new one where another tab has changed the job since it was
  // read here, so that neither is lost. Throws where the device has no room.
  async keep(job) {
    const kept = { ...job, changed: Date.now() };
    if (!this.lasting) {
      this.#memory.set(job.id, structuredClone({ ...kept, revision: job.revision + 1 }));
      return { id: job.id, revision: job.revision + 1 };
    }
    const transaction = this.#database.transaction(table, 'readwrite');
    const rows = transaction.objectStore(table);
    const ended = new Promise((resolve, reject) => {
      transaction.oncomplete = resolve;
      transaction.onabort = () => reject(transaction.error);
    });
    const stored = await done(rows.get(job.id));
    const clash = stored !== undefined && stored.revision !== job.revision;
    const id = clash ? newId() : job.id;
    const revision = clash ? 1 : job.revision + 1;
    rows.put({ ...kept, id, revision });
    await ended;
    return { id, revision };
  }

  async remove(id) {
    if (!this.lasting) this.#memory.delete(id);
    else await done(this.#table('readwrite').delete(id));
  }

  // The mix book's text, empty where there is none.
  async book() {
    const row = this.lasting ? await done(this.#table('readonly').get(bookId)) : this.#memory.get(bookId);
    return row?.text ?? '';
  }

  // Keeps the book if it still says `before`; false where another tab has changed it meanwhile.
  async keepBook(text, before) {
    const row = { id: bookId, text };
    if (!this.lasting) {
      this.#memory.set(bookId, row);
      return true;
    }
    const transaction = this.#database.transaction(table, 'readwrite');
    const rows = transaction.objectStore(table);
    const ended = new Promise((resolve, reject) => {
      transaction.oncomplete = resolve;
      transaction.onabort = () => reject(transaction.error);
    });
    const stored = await done(rows.get(bookId));
    const same = (stored?.text ?? '') === before;
    if (same) rows.put(row);
    await ended;
    return same;
  }
}
