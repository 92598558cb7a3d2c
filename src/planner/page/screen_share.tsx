// The pour on its way to others: files, the phone's share sheet, a link.
import { useState } from 'preact/hooks';
import type { Ending } from './answers';
import type { App } from './app';
import { bookName, forecastPath, textOf, type Job } from './job';
import { say } from './say';
import { give, linkOf, safeName } from './share';
import { Button, TextField } from './ui';

const spoken = [['Plan as text', 'text', ''], ['Crew as text', 'crew', '-crew'], ['Saw list as text', 'saw', '-saw'], ['Order for the plant', 'order', '-order']] as const;

export function ShareScreen({ app, job }: { app: App; job: Job }) {
  const [told, setTold] = useState('');
  const [link, setLink] = useState('');
  const { answer } = app.planner.state;
  const name = safeName(job.tables.name);
  const send = async (file: string, type: string, text: string) => {
    if (await give(file, type, text)) setTold(`${file} is on its way.`);
  };
  // A file that is there once the text of it is.
  const file = (words: string, ending: string, type: string, text: string | undefined) =>
    <Button key={words} disabled={!text} onClick={() => void send(ending.includes('/') ? ending.slice(1) : `${name}${ending}`, type, text ?? '')}>{words}</Button>;
  const sheet = (words: string, ending: Ending, type: string) => file(words, ending, type, answer?.files[ending]);
  const copyLink = async () => {
    const made = await linkOf(textOf(job));
    try {
      await navigator.clipboard.writeText(made);
      setTold('The link is copied. It holds the whole job; no server has seen it.');
    } catch {
      setTold('');
      setLink(made);
    }
    say('Link');
  };
  return <section class="page share">
    <h1 tabIndex={-1}>Share</h1>
    <TextField label="Name of the pour" value={job.tables.name} take={(text) => app.edit(({ tables }) => { tables.name = text; })} />
    <h2>For the crew</h2>
    {!answer?.files['.html'] && <p>The sheets come with the plan.</p>}
    <div class="row">
      {sheet('Day sheet', '.html', 'text/html')}
      {sheet('Calendar', '.ics', 'text/calendar')}
      {spoken.map(([words, key, end]) => file(words, `${end}.txt`, 'text/plain', answer?.[key]))}
      {sheet('Table', '.csv', 'text/csv')}
    </div>
    <h2>The job itself</h2>
    <p>A text file that opens here again; the slabtide program makes the same plan from it.</p>
    <div class="row">
      {file('Job file', '.toml', 'application/toml', textOf(job))}
      {job.forecast && file('Its forecast', `/${String(forecastPath(job)).split('/').pop()}`, 'application/octet-stream', job.forecast.text)}
      {app.book && file('Mix book', `/${bookName}`, 'application/toml', app.book)}
      {job.journal && file('What was noted', '.journal', 'text/plain', job.journal)}
      <Button onClick={() => void copyLink()}>Copy a link</Button>
    </div>
    <p role="status">{told}{link && <>Copy this: <textarea readOnly rows={4} aria-label="Link" value={link} /></>}</p>
    {app.book && <p>Keep the mix book beside the job file: the slabtide program finds it there.</p>}
    {job.forecast && <p>A link holds no forecast: whoever opens it has to get a new one.</p>}
    <h2>All your pours</h2>
    <p>Back up and restore from the list of pours.</p>
  </section>;
}
