import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { EnterBefore } from './enter-before.tsx';
import { EnterCode } from './enter-code.tsx';
import { EnterKept } from './enter-kept.tsx';
import { EnterOutcome } from './enter-outcome.tsx';
import { EnterReadBack } from './enter-read-back.tsx';
import { EnterSecond } from './enter-second.tsx';
import { EnterStop } from './enter-stop.tsx';
import { EnterUnknown } from './enter-unknown.tsx';
import type { Entry } from './entry.ts';
import './new-result.css';

/** A result by its code: checked against a second detail, shown back, and only then kept. */
export function NewResultScreen(): JSX.Element {
  const { results } = useAllWords();
  const [entry, setEntry] = useState<Entry>({ step: 'code' });
  return (
    <>
      <PageHead title={results.entry.title} />
      <div key={entry.step} class="entry">
        <Step entry={entry} onEntry={setEntry} />
      </div>
    </>
  );
}

function Step({
  entry,
  onEntry,
}: {
  readonly entry: Entry;
  readonly onEntry: (entry: Entry) => void;
}): JSX.Element {
  switch (entry.step) {
    case 'code':
      return <EnterCode onEntry={onEntry} />;
    case 'unknown':
      return <EnterUnknown at={entry} onEntry={onEntry} />;
    case 'second':
      return <EnterSecond at={entry} onEntry={onEntry} />;
    case 'stop':
      return <EnterStop at={entry} onEntry={onEntry} />;
    case 'before':
      return <EnterBefore at={entry} onEntry={onEntry} />;
    case 'outcome':
      return <EnterOutcome at={entry} onEntry={onEntry} />;
    case 'read-back':
      return <EnterReadBack at={entry} onEntry={onEntry} />;
    case 'kept':
      return <EnterKept onEntry={onEntry} />;
  }
}
