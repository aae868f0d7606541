import type { JSX } from 'preact';
import type { StopReason } from '../../../care/custody/facts.ts';
import { spoilReasons, stopReasons } from '../../../care/custody/facts.ts';
import type { Person } from '../../../care/people/person.ts';
import { paperEnds } from '../../../procedures/write-from-paper.ts';
import { useDesk } from '../../desk/desk.ts';
import { KeepForm } from '../../keeping/keep-form.tsx';
import type { FormOf } from '../../keeping/use-form.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Checks, Choice } from '../../pieces/form/choice.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { useWords } from '../../words/use-words.ts';
import { MomentField } from '../parts/moment-field.tsx';
import { StaffField } from '../parts/staff-field.tsx';
import { to } from '../paths.ts';
import type { PaperEntry } from './paper-entry.ts';
import { hasKit, wrongWith } from './paper-entry.ts';

interface PaperWhatProps {
  readonly form: FormOf<PaperEntry>;
  readonly person: Person;
  readonly back: string;
}

/** What the line says. Only what its end needs is asked. */
export function PaperWhat({ form, person, back }: PaperWhatProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.fromPaper;
  const { value, set, bind, keep } = form;

  const onNext = (): Promise<void> => {
    const { zone } = desk.home.service;
    if (keep.fine(wrongWith(value, { words, zone, now: desk.now() })))
      set({ step: hasKit(value) ? 'codes' : 'check' });
    return Promise.resolve();
  };

  return (
    <KeepForm
      keep={keep}
      onKeep={onNext}
      label={words.results.entry.next}
      class="record-form"
      beside={
        <Button kind="quiet" href={to(back)}>
          {words.keeping.back}
        </Button>
      }
    >
      <Checks
        {...bind('name')}
        label={say.name}
        options={[{ value: 'read', label: say.nameIs(person.name) }]}
      />
      <Choice
        {...bind('end')}
        label={say.what}
        options={paperEnds.map((end) => ({ value: end, label: say.ends[end] }))}
      />
      <MomentField {...bind('when')} label={say.when} hint={say.whenHint} />
      <StaffField {...bind('swabber')} label={say.swabber} />
      <StaffField {...bind('recorder')} label={say.recorder} />
      <StaffField {...bind('wrote')} label={say.wrote} />
      <EndFields form={form} />
    </KeepForm>
  );
}

/** What is asked for one end of a turn and not for another. */
function EndFields({
  form: { value, bind, set },
}: {
  readonly form: FormOf<PaperEntry>;
}): JSX.Element {
  const words = useWords();
  const say = words.fromPaper;
  const { end } = value;
  const touched = end === 'taken' || end === 'stopped' || end === 'spoiled';
  return (
    <>
      {(touched || end === 'declined') && (
        <Choice
          {...bind('knew')}
          label={say.knew}
          options={(['birthday', 'face', 'unsaid'] as const).map((way) => ({
            value: way,
            label: say.ways[way],
          }))}
        />
      )}
      {touched && (
        <Choice
          {...bind('saidYes')}
          label={say.saidYes}
          options={[
            { value: 'yes', label: say.yesSaid },
            { value: 'unsaid', label: say.ways.unsaid },
          ]}
        />
      )}
      {end === 'taken' && (
        <>
          <Choice
            {...bind('sites')}
            label={say.sites}
            options={(['throat-and-nose', 'nose-only'] as const).map((sites) => ({
              value: sites,
              label: say.siteNames[sites],
            }))}
          />
          <Choice
            {...bind('taker')}
            label={say.taker}
            options={(['staff', 'person'] as const).map((taker) => ({
              value: taker,
              label: say.takers[taker],
            }))}
          />
          <Checks
            {...bind('sealed')}
            label={say.tube}
            options={[{ value: 'sealed', label: say.tubeSealed }]}
          />
        </>
      )}
      {end === 'stopped' && (
        <>
          <Select
            {...bind('stop')}
            onValue={(why) => set({ stop: why as StopReason | '' })}
            label={say.stop}
            none={say.ways.unsaid}
            options={stopReasons.map((why) => ({ value: why, label: words.turn.stops[why] }))}
          />
          <Choice
            {...bind('opened')}
            label={say.opened}
            options={(['yes', 'no'] as const).map((each) => ({
              value: each,
              label: say.yesNo[each],
            }))}
          />
        </>
      )}
      {end === 'spoiled' && (
        <Choice
          {...bind('spoil')}
          label={words.turn.whatIsWrong}
          options={spoilReasons
            .filter((why) => why !== 'stopped' && why !== 'handed-over')
            .map((why) => ({ value: why, label: words.turn.faults[why] }))}
        />
      )}
    </>
  );
}
