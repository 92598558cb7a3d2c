// After the pour: what was noted beside what was planned, and what the mix book learns of it.
import { useState } from 'preact/hooks';
import { reasonOf, type CheckBack, type Files } from './answers';
import type { App } from './app';
import { bookName, clockOf, type Job } from './job';
import { Refused } from './plan_asked';
import { say } from './say';
import { give } from './share';
import { Button, Fault, Group } from './ui';

interface AfterProps {
  app: App;
  job: Job;
}
export function AfterScreen({ app, job }: AfterProps) {
  return <section class="page after">
    <h1 tabIndex={-1}>After the pour</h1>
    {job.journal ? <>
      <CheckBackForm app={app} job={job} />
      <Learning app={app} job={job} />
    </> : <p>Nothing was noted for this pour. Tap the signs on the slab page as you see them: afterward they show how far the plan was off, and the next one starts from it.</p>}
    <Button onClick={() => app.go('slab')}>Back to the slab</Button>
  </section>;
}

function CheckBackForm({ app, job }: AfterProps) {
  const asked = app.asked['check-back'];
  const answer = asked?.answer;
  return <Group title="Noted and planned" busy={Boolean(asked?.working)}>
    {!asked && <Button onClick={() => void app.askFor('check-back')}>Compare them</Button>}
    {asked?.working && <p role="status">Working it out ...</p>}
    {answer && (answer.ok ? <Checked app={app} job={job} files={answer.files} /> : <Refused answer={answer} />)}
  </Group>;
}

const offWords = (minutes: number) => (minutes === 0 ? 'as planned' : `${Math.abs(minutes)} min ${minutes > 0 ? 'later' : 'earlier'} than planned`);

function Checked({ app, job, files }: AfterProps & { files: Files }) {
  const clock = clockOf(job);
  const { readings } = JSON.parse(files['.json'] ?? '') as CheckBack;
  const events = readings.filter((each) => each.planned);
  return <>
    {events.length ? <table aria-label="Noted and planned">
      <thead><tr><th scope="col">Seen</th><th scope="col">When</th></tr></thead>
      <tbody>
        {events.map((each, i) => <tr key={i}>
          <th scope="row">{each.reading.replaceAll('-', ' ')}<small><bdi>{[each.zone, each.part].filter(Boolean).join(', ')}</bdi></small></th>
          <td>{clock(each.at)}, planned {clock(each.planned)}<small>{offWords(each.late_min)}</small></td>
        </tr>)}
      </tbody>
    </table> : <p>None of what was noted has a time in the plan.</p>}
    <Button onClick={() => app.show('Noted and planned', files['.html'])}>See all of it</Button>
  </>;
}

function Learning({ app, job }: AfterProps) {
  const [fault, setFault] = useState('');
  const named = String(job.tables.mix.name ?? '').trim() !== '';
  const learn = async () => {
    try {
      const told = `In the mix book: ${await app.learn()}.`;
      app.learned = { job, told };
      setFault('');
      say(told);
      app.shown();
    } catch (error) {
      setFault(reasonOf(error));
    }
  };
  return <Group title="Into the mix book">
    <p>What this pour says about its mix; the next pour of that name is planned from it.</p>
    {named ? <Button class="main" onClick={() => void learn()}>Learn from this pour</Button>
      : <p>The mix has no name yet: give it one, as your plant calls it. <Button onClick={() => app.go('details')}>Name the mix</Button></p>}
    <Fault>{fault}</Fault>
    <p role="status">{app.learned?.job === job && app.learned.told}</p>
    {app.book && <Button onClick={() => void give(bookName, 'application/toml', app.book)}>Save the mix book</Button>}
  </Group>;
}
