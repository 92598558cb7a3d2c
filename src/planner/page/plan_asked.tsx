// What the plan's screen works out when it is asked for: what can still be changed, and the hours.
import type { ComponentChildren } from 'preact';
import type { Choice, Comparison, Files, Refusal } from './answers';
import type { App } from './app';
import { clockOf, type Job } from './job';
import type { More } from './plan';
import { Button } from './ui';

export const Refused = ({ answer }: { answer: Refusal }) =>
  <pre class="fault" role="alert">{answer.messages || answer.findings?.[0]?.message || answer.error || 'It cannot be worked out.'}</pre>;

interface CardProps {
  app: App;
  word: More;
  title: string;
  offer: string;
  tap: string;
  wait: string;
  children(files: Files): ComponentChildren;
}
function AskedCard({ app, word, title, offer, tap, wait, children }: CardProps) {
  const asked = app.asked[word];
  return <section class="card" aria-busy={Boolean(asked?.working)}>
    <h2>{title}</h2>
    {!asked && <>
      <p>{offer}</p>
      <Button onClick={() => void app.askFor(word)}>{tap}</Button>
    </>}
    {asked?.working && <p role="status">{wait}</p>}
    {asked?.answer && (asked.answer.ok ? children(asked.answer.files) : <Refused answer={asked.answer} />)}
  </section>;
}

export const CompareCard = ({ app, job }: { app: App; job: Job }) =>
  <AskedCard app={app} word="compare" title="What can still be changed" tap="Try them" wait="Trying each on possible days: this takes a while. You can keep working."
    offer="Retarder, the concrete, trucks, the start, hands, shade, covers: each is tried on the same days.">
    {(files) => <Compared app={app} job={job} files={files} />}
  </AskedCard>;

function Compared({ app, job, files }: { app: App; job: Job; files: Files }) {
  const told = JSON.parse(files['.json'] ?? '') as Comparison;
  const { order, why, cost, turning } = told.advice;
  return <>
    <p><strong>{order}</strong></p>
    {[why, cost, turning].map((words, i) => words && <p key={i}>{words}</p>)}
    <ChoiceList job={job} told={told} />
    <Button onClick={() => app.show('Comparison', files['.html'])}>Full comparison</Button>
  </>;
}

// The one to prefer first, then as they were tried.
function ChoiceList({ job, told }: { job: Job; told: Comparison }) {
  const clock = clockOf(job);
  const best = told.choices[told.best];
  const item = (choice: Choice) => <li key={choice.choice}>
    <strong><bdi>{choice.choice}</bdi>{choice === best && told.verdict !== 'think_again' && ', the one to prefer'}</strong>
    {`: ${choice.expected_late_min > 0 ? `${choice.expected_late_min} min late on average` : 'nothing late'}`}
    {choice.last_finish && `, finished ${clock(choice.last_finish)}`}
    {choice.smallest_crew ? `, ${choice.smallest_crew} hands would do` : ''}
    {choice.stops > 0 && <strong>, {choice.stops} {choice.stops === 1 ? 'stop' : 'stops'}</strong>}
    {choice.takes && <small> {choice.takes}</small>}
  </li>;
  return <ul class="choices">{[...(best ? [best] : []), ...told.choices.filter((choice) => choice !== best)].map(item)}</ul>;
}

export const OutlookCard = ({ app }: { app: App }) =>
  <AskedCard app={app} word="outlook" title="The weather by the hour" tap="Show the hours" wait="Working it out ..."
    offer="Air, wind, sun, rain and how fast the slab dries, hour by hour.">
    {(files) => <Button onClick={() => app.show('Weather by the hour', files['.html'])}>The hours</Button>}
  </AskedCard>;
