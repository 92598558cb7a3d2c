// All pours on this device.
import { useState } from 'preact/hooks';
import type { App } from './app';
import { bookName, dateOf, textOf, type Job } from './job';
import { lookNow, takeLook } from './look';
import { say } from './say';
import { download, safeName } from './share';
import { Button, Fault, FileButton, Folded, Tiles, type Choices } from './ui';
import { dayText, localDate } from './units';

const looks: Choices = [['', 'Same as this device'], ['sunlight', 'Bright sunlight']];

export function JobsScreen({ app }: { app: App }) {
  const [fault, setFault] = useState('');
  const take = (look: string) => {
    takeLook(look);
    app.shown();
  };
  const restore = async (text: string) => {
    const { count, faults } = await app.restore(text);
    app.tell([`${count} ${count === 1 ? 'pour' : 'pours'} restored.`, ...faults.map((each) => `Left out: ${each}.`)].join('\n'));
  };
  return <section class="page">
    <h1 tabIndex={-1}>Your pours</h1>
    {!app.store.lasting && <p class="fault">This window keeps nothing once it is closed (a private window?). Save your job files from Share.</p>}
    <div class="row"><Button class="main" onClick={() => void app.create()}>New pour</Button></div>
    {app.jobs.length ? <ul class="jobs">{app.jobs.map((job) => <JobRow key={job.id} app={app} job={job} />)}</ul>
      : <p>Nothing here yet. Start a new pour: draw it, say where and when, and the plan comes by itself. What you enter stays on this device until you share it; asking for the forecast sends the site’s coordinates to the weather service, and looking up a town sends its name.</p>}
    <Folded summary="Open a file, back up, restore">
      <div class="row">
        <FileButton words="Open a job file" accept=".toml,text/plain" largest_mb={32} take={async (text) => app.open(await app.import(text), 'plan')} tell={setFault} />
        <Button disabled={app.jobs.length === 0} onClick={() => download(`slabtide-backup-${localDate()}.json`, 'application/json', app.backup())}>Back up all pours</Button>
        <FileButton words="Restore a backup" accept=".json,application/json" largest_mb={32} take={restore} tell={setFault} />
      </div>
      <p>A phone may clear what a page has kept when it runs out of room. A backup is one file with all of it.</p>
    </Folded>
    {app.told && <p class="told">{app.told}</p>}
    <MixBook app={app} tell={setFault} />
    <Tiles legend="Look" choices={looks} taken={lookNow()} take={take} />
    <Fault>{fault}</Fault>
  </section>;
}

// What finished pours have shown of their mixes, in the engine's words once it is opened.
function MixBook({ app, tell }: { app: App; tell(fault: string): void }) {
  const [words, setWords] = useState('');
  const read = async () => setWords(app.book && await app.bookWords());
  const open = async (text: string) => {
    await app.openBook(text);
    await read();
  };
  return <Folded summary="Mix book" onOpen={() => void read()}>
    {app.book ? <pre>{words}</pre> : <p>Empty so far. A finished pour goes into it from On slab, After the pour. Or open the one you have.</p>}
    <div class="row">
      {app.book && <Button onClick={() => download(bookName, 'application/toml', app.book)}>Save the mix book</Button>}
      <FileButton words="Open a mix book" accept=".toml,text/plain" largest_mb={32} take={open} tell={tell} />
    </div>
  </Folded>;
}

function JobRow({ app, job }: { app: App; job: Job }) {
  const [sure, setSure] = useState(false);
  const name = job.tables.name || 'Pour';
  const date = dateOf(job);
  // A second tap on the same place deletes.
  const remove = () => {
    if (sure) return void app.remove(job);
    setSure(true);
    return say('Tap again to delete it for good');
  };
  return <li>
    <Button class="job" onClick={() => app.open(job, 'plan')}><strong><bdi>{name}</bdi></strong> <span>{date && dayText(date, true)}</span></Button>
    <div class="row">
      <Button aria-label={`Copy ${name}`} onClick={() => void app.copy(job)}>Copy</Button>
      <Button aria-label={`Save ${name} as a file`} onClick={() => download(`${safeName(name)}.toml`, 'application/toml', textOf(job))}>Save file</Button>
      <Button aria-label={sure ? undefined : `Delete ${name}`} onClick={remove}>{sure ? 'Delete for good?' : 'Delete'}</Button>
    </div>
  </li>;
}
