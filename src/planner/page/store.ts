// Jobs kept on this device, in the browser's own database. Where there is none (a private window),
// they live as long as the page, and the page says so.
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { newId, type Job } from './job';

const name = 'slabtide-planner';
const table = 'jobs';
const bookId = 'mix-book'; // beside the jobs, so that a device with an older page need not be changed

interface Book {
  id: string;
  text: string;
}
type Row = Job | Book;
const isJob = (row: Row | undefined): row is Job => row !== undefined && row.id !== bookId;
const textIn = (row: Row | undefined) => (row && 'text' in row ? row.text : '');

interface Kept extends DBSchema {
  jobs: { key: string; value: Row };
}

export class Store {
  #database: IDBPDatabase<Kept> | undefined;
  #memory = new Map<string, Row>();
  fault = '';

  async start(): Promise<this> {
    try {
      this.#database = await openDB<Kept>(name, 1, { upgrade: (database) => { database.createObjectStore(table, { keyPath: 'id' }); } });
      navigator.storage?.persist?.().catch(() => {});
    } catch {
      // Then in memory.
    }
    return this;
  }

  get lasting(): boolean {
    return this.#database !== undefined;
  }

  // In one go: what `change` makes of the row of that id is kept, under its own id. Throws where the
  // device has no room.
  async #change(id: string, change: (stored: Row | undefined) => Row | undefined) {
    const transaction = this.#database?.transaction(table, 'readwrite');
    const row = change(transaction ? await transaction.store.get(id) : this.#memory.get(id));
    if (transaction) await Promise.all([row && transaction.store.put(row), transaction.done]);
    else if (row) this.#memory.set(row.id, structuredClone(row));
  }

  async all(): Promise<Job[]> {
    const rows = await this.#database?.getAll(table) ?? structuredClone([...this.#memory.values()]);
    return rows.filter(isJob).sort((a, b) => b.changed - a.changed);
  }

  // Keeps the job, and gives its id: a new one where another tab has changed the job since it was
  // read here, so that neither is lost.
  async keep(job: Job): Promise<Pick<Job, 'id' | 'revision'>> {
    const kept = { ...job, changed: Date.now() };
    await this.#change(job.id, (stored) => {
      const clash = isJob(stored) && stored.revision !== job.revision;
      return Object.assign(kept, clash ? { id: newId(), revision: 1 } : { revision: job.revision + 1 });
    });
    return { id: kept.id, revision: kept.revision };
  }

  async remove(id: string) {
    this.#memory.delete(id);
    await this.#database?.delete(table, id);
  }

  // The mix book's text, empty where there is none.
  async book(): Promise<string> {
    return textIn(this.#database ? await this.#database.get(table, bookId) : this.#memory.get(bookId));
  }

  // Keeps the book if it still says `before`; false where another tab has changed it meanwhile.
  async keepBook(text: string, before: string): Promise<boolean> {
    let same = false;
    await this.#change(bookId, (stored) => {
      same = textIn(stored) === before;
      return same ? { id: bookId, text } : undefined;
    });
    return same;
  }
}
