import type { JSX } from 'preact';
import { consentOn } from '../../../care/consent/decision.ts';
import { asksFor } from '../../../care/consent/path.ts';
import type { RulePack } from '../../../care/consent/rule-pack.ts';
import type { FormOf } from '../../keeping/use-form.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import type { AllWords } from '../../words/en-all.ts';
import type { PersonData } from '../person/person-data.ts';
import type { DecisionDraft } from './draft.ts';

/** What stands now, and is replaced. */
export function InForce({
  desk,
  words,
  person,
  today,
  test,
}: PersonData & { readonly test: string }): JSX.Element | null {
  const consent = consentOn(desk.home, person.id, test, today);
  if (!('decision' in consent) || consent.state === 'other-test') return null;
  const { authority, until } = consent.decision.data;
  return <p class="soft">{words.deciding.now(words.record.authorities[authority], until)}</p>;
}

/** Everything that was answered, to be read before it is kept; each line leads back to its question. */
export function ReadThrough({
  form,
  pack,
  words,
}: {
  readonly form: FormOf<DecisionDraft>;
  readonly pack: RulePack;
  readonly words: AllWords;
}): JSX.Element {
  const { deciding: say, support, record, dates } = words;
  const { value } = form;
  const said = asksFor(pack, value).map((ask) => {
    switch (ask.ask) {
      case 'start':
        return [say.start, value.start && say.starts[value.start]] as const;
      case 'conclusion':
        return [say.conclusion, value.conclusion && say.conclusions[value.conclusion]] as const;
      case 'authority':
        return [say.authority, value.authority && support.authorities[value.authority]] as const;
      case 'part':
        return [say.parts[ask.part], saidPart(ask.part)] as const;
    }
  });
  return (
    <>
      <h2 tabIndex={-1}>{say.read}</h2>
      <p>{say.readLead}</p>
      <DetailList
        details={[
          ...said.map(([label, text], i) => ({
            key: label,
            label,
            value: (
              <>
                {text || words.keeping.nothing}{' '}
                <Button
                  kind="quiet"
                  label={record.amendPart(label)}
                  onPress={() => form.set({ step: i + (form.value.step - said.length - 1) })}
                >
                  {record.amend}
                </Button>
              </>
            ),
          })),
          { key: 'from', label: say.from, value: value.from && dates.date(value.from) },
          { key: 'review', label: say.review, value: value.review && dates.date(value.review) },
          { key: 'until', label: say.until, value: value.until && dates.date(value.until) },
        ]}
      />
    </>
  );

  function saidPart(part: keyof DecisionDraft['texts']): string {
    const limb = part in value.limbs ? value.limbs[part as keyof DecisionDraft['limbs']] : '';
    const paper =
      part === 'document' && value.document !== ''
        ? value.document === 'seen'
          ? say.documentSeen
          : say.documentNotSeen
        : '';
    return [limb === '' ? '' : `${say[limb]}.`, paper && `${paper}.`, value.texts[part]]
      .filter(Boolean)
      .join(' ');
  }
}
