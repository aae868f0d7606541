import type { JSX } from 'preact';
import type { NewFact } from '../../../care/catalogue.ts';
import type { PpeItem } from '../../../care/supplies/facts.ts';
import { ppeItems } from '../../../care/supplies/facts.ts';
import { countPpe } from '../../../procedures/supplies.ts';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Field } from '../../pieces/form/field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';

const empty: Readonly<Record<PpeItem, string>> = {
  gloves: '',
  aprons: '',
  masks: '',
  'eye-protection': '',
};

/** What was counted on the shelf; an item left empty was not counted. */
export function PpeForm(): JSX.Element {
  const { supplies } = useAllWords();
  const title = supplies.ppe.formTitle;
  const form = useForm(empty, { title, back: paths.kits });
  return (
    <RecordForm
      title={title}
      lead={<p>{supplies.ppe.formLead}</p>}
      back={paths.kits}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      {ppeItems.map((item) => (
        <Field
          key={item}
          {...form.bind(item)}
          label={supplies.items[item]}
          inputMode="numeric"
          wide={6}
          optional
        />
      ))}
    </RecordForm>
  );

  async function keep(): Promise<void> {
    const counted = ppeItems.filter((item) => form.value[item].trim() !== '');
    await form.submit([], (home, doing) => {
      const facts: NewFact[] = [];
      for (const item of counted) {
        const outcome = countPpe(home, { item, count: Number(form.value[item]) }, doing);
        if (!outcome.ok) return outcome;
        facts.push(...outcome.value);
      }
      return { ok: true, value: facts };
    });
  }
}
