import type { JSX } from 'preact';
import { policiesKnown } from '../../../care/policy/in-force.ts';
import type { Policy } from '../../../care/policy/policy.ts';
import type { Day } from '../../../care/time.ts';
import { confirmPolicy } from '../../../procedures/supplies.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { OnlyFor } from '../../keeping/only-for.tsx';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Choice } from '../../pieces/form/choice.tsx';
import { DateField } from '../../pieces/form/date-field.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';
import { PolicyCautions } from './policy-cautions.tsx';
import { digestOf, policyKey } from './policy-file.ts';
import './policy.css';

/** The manager says by which version of which policy this home works, and from which day. */
export function ConfirmForm(): JSX.Element {
  const { policy: say } = useAllWords();
  return (
    <OnlyFor role="manager" title={say.form.title} back={paths.policy}>
      <OpenForm />
    </OnlyFor>
  );
}

const valueOf = (policy: Policy): string => digestOf(policy) ?? policyKey(policy);

interface ConfirmFields {
  readonly policy: string;
  readonly from: string;
}

function OpenForm(): JSX.Element {
  const desk = useDesk();
  const { policy: words, keeping } = useAllWords();
  const say = words.form;
  const form = useForm<ConfirmFields>(
    { policy: '', from: todayOf(desk) },
    { title: say.title, back: paths.policy },
  );
  const policies = policiesKnown(desk.home);
  const picked = policies.find((policy) => valueOf(policy) === form.value.policy);
  return (
    <RecordForm
      title={say.title}
      lead={<p>{say.lead}</p>}
      back={paths.policy}
      keep={form.keep}
      onKeep={() => void keep()}
      label={say.press}
    >
      <Choice
        {...form.bind('policy')}
        label={say.which}
        options={policies.map((policy) => ({
          value: valueOf(policy),
          label: words.name(policy.title, policy.version),
          hint: twice(policy)
            ? `${words.forWhere(policy.jurisdiction)} ${say.digest}: ${valueOf(policy)}`
            : words.forWhere(policy.jurisdiction),
        }))}
      />
      {picked !== undefined && (
        <>
          <PolicyCautions policy={picked} />
          <Digest policy={picked} />
        </>
      )}
      <DateField {...form.bind('from')} label={say.from} />
    </RecordForm>
  );

  /** Two may have written one version each: their marks tell them apart. */
  function twice(policy: Policy): boolean {
    return policies.filter((other) => policyKey(other) === policyKey(policy)).length > 1;
  }

  async function keep(): Promise<void> {
    const digest = picked && digestOf(picked);
    const wrong = [
      ...missing({ policy: form.value.policy }, keeping.pickOne),
      ...missing({ from: form.value.from }, keeping.fillIn),
      ...(picked !== undefined && digest === undefined
        ? [{ field: 'policy', text: say.cannot }]
        : []),
    ];
    await form.submit(wrong, (home, doing) => {
      if (picked === undefined || digest === undefined) return { ok: true, value: [] };
      const { policy, version } = picked;
      return confirmPolicy(home, { policy, version, digest, from: form.value.from as Day }, doing);
    });
  }
}

function Digest({ policy }: { readonly policy: Policy }): JSX.Element {
  const { policy: words } = useAllWords();
  const digest = digestOf(policy);
  if (digest === undefined) return <Notice kind="look" title={words.form.cannot} />;
  return (
    <div>
      <h2>{words.form.digest}</h2>
      <p>
        <CodeText code={digest} />
      </p>
      <p class="soft">{words.form.digestHint}</p>
    </div>
  );
}
