import type { JSX } from 'preact';
import { policyOn } from '../../../care/policy/in-force.ts';
import type { Policy } from '../../../care/policy/policy.ts';
import type { Day } from '../../../care/time.ts';
import { pureHash } from '../../../ledger/hash.ts';
import { amendPolicy } from '../../../procedures/amend-policy.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { OnlyFor } from '../../keeping/only-for.tsx';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Choice } from '../../pieces/form/choice.tsx';
import { DateField } from '../../pieces/form/date-field.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';
import type { AmendFields } from './amend-parts.tsx';
import { firstDay, SourceAndDay } from './amend-parts.tsx';

type YesNo = 'yes' | 'no' | '';
interface DecidingFields extends AmendFields {
  readonly pack: string;
  readonly packUntil: string;
  readonly longestDays: string;
  readonly reviewWithinDays: string;
  readonly late: YesNo;
  readonly paper: YesNo;
}

/** The manager says which law's demands a decision record follows, how long one holds, and what holds a swab. */
export function DecidingForm(): JSX.Element {
  const desk = useDesk();
  const { policy, refusals } = useAllWords();
  const first = firstDay(desk.home, todayOf(desk));
  const { decisions } = policyOn(desk.home, first).policy;
  return (
    <OnlyFor role="manager" title={policy.amend.deciding} back={paths.policy}>
      {decisions === undefined ? (
        <Notice kind="look" title={refusals.noRulePack} />
      ) : (
        <OpenForm decisions={decisions} first={first} />
      )}
    </OnlyFor>
  );
}

interface OpenProps {
  readonly decisions: NonNullable<Policy['decisions']>;
  readonly first: Day;
}

function OpenForm({ decisions, first }: OpenProps): JSX.Element {
  const { policy, deciding, keeping } = useAllWords();
  const say = policy.amend;
  const yesNo = (holds: boolean): YesNo => (holds ? 'yes' : 'no');
  const form = useForm<DecidingFields>(
    {
      pack: decisions.pack.value,
      packUntil: decisions.pack.until ?? '',
      longestDays: String(decisions.longestDays.value),
      reviewWithinDays: String(decisions.reviewWithinDays?.value ?? ''),
      late: yesNo(decisions.holdPastReview.value),
      paper: yesNo(decisions.holdUntilDocumentSeen.value),
      ...{ source: '', from: first },
    },
    { title: say.deciding, back: paths.policy },
  );
  const { value } = form;
  const options = [
    { value: 'yes' as const, label: policy.rows.yes },
    { value: 'no' as const, label: policy.rows.no },
  ];
  return (
    <RecordForm
      title={say.deciding}
      lead={
        <>
          <p>{say.lead}</p>
          <Notice kind="note" title={deciding.caution}>
            {deciding.force}
          </Notice>
        </>
      }
      back={paths.policy}
      keep={form.keep}
      onKeep={() => void keep()}
      label={say.press}
    >
      <Choice
        {...form.bind('pack')}
        label={say.pack}
        hint={say.packHint}
        options={decisions.packs.map(({ pack, title, version, jurisdiction, source }) => ({
          value: pack,
          label: deciding.policy.version(title, version),
          hint: `${jurisdiction}. ${source}`,
        }))}
      />
      <DateField {...form.bind('packUntil')} label={say.packUntil} min={value.from} optional />
      <Field {...form.bind('longestDays')} label={say.longest} inputMode="numeric" wide={4} />
      <Field
        {...form.bind('reviewWithinDays')}
        label={say.reviewWithin}
        inputMode="numeric"
        wide={4}
        optional
      />
      <Choice {...form.bind('late')} label={say.late} inline options={options} />
      <Choice {...form.bind('paper')} label={say.paper} inline options={options} />
      <SourceAndDay form={form} first={first} />
    </RecordForm>
  );

  async function keep(): Promise<void> {
    const { pack, packUntil, longestDays, reviewWithinDays, source, from } = value;
    const numbers = { longestDays, ...(reviewWithinDays !== '' && { reviewWithinDays }) };
    const wrong = [
      ...Object.entries(numbers)
        .filter(([, text]) => !/^[0-9]{1,4}$/.test(text.trim()))
        .map(([field]) => ({ field, text: say.whole })),
      ...missing({ source, from }, keeping.fillIn),
    ];
    await form.submit(wrong, (home, doing) =>
      amendPolicy(
        home,
        {
          change: {
            ...{ change: 'decisions', pack, longestDays: Number(longestDays) },
            ...(packUntil !== '' && { packUntil: packUntil as Day }),
            ...(reviewWithinDays !== '' && { reviewWithinDays: Number(reviewWithinDays) }),
            ...{ holdPastReview: value.late === 'yes' },
            holdUntilDocumentSeen: value.paper === 'yes',
          },
          ...{ source, from: from as Day, hash: pureHash },
        },
        doing,
      ),
    );
  }
}
