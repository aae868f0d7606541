import type { JSX } from 'preact';
import type { Limb, Part } from '../../../care/consent/facts.ts';
import { limbs, told } from '../../../care/consent/facts.ts';
import type { Ask } from '../../../care/consent/path.ts';
import type { RulePack } from '../../../care/consent/rule-pack.ts';
import type { FormOf } from '../../keeping/use-form.ts';
import { Checks, Choice } from '../../pieces/form/choice.tsx';
import { Field } from '../../pieces/form/field.tsx';
import type { AllWords } from '../../words/en-all.ts';
import type { DecisionDraft } from './draft.ts';

export interface AskProps {
  readonly form: FormOf<DecisionDraft>;
  readonly pack: RulePack;
  readonly ask: Ask;
  readonly words: AllWords;
}

const isLimb = (part: Part): part is Limb => (limbs as readonly Part[]).includes(part);

/** One question of the record. None is picked beforehand, whatever was answered before it. */
export function AskPage(props: AskProps): JSX.Element {
  const { form, pack, ask, words } = props;
  const { deciding: say, support } = words;
  switch (ask.ask) {
    case 'start':
      return (
        <Choice
          {...form.bind('start')}
          label={say.start}
          options={pack.starts.map(({ start, section }) => ({
            value: start,
            label: say.starts[start],
            hint: `${say.startHints[start]} (${section})`,
          }))}
        />
      );
    case 'conclusion':
      return (
        <Choice
          {...form.bind('conclusion')}
          label={say.conclusion}
          hint={say.conclusionHint}
          options={ask.options.map((value) => ({
            value,
            label: say.conclusions[value],
            hint: pack.conclusions.find((each) => each.conclusion === value)?.section,
          }))}
        />
      );
    case 'authority':
      return (
        <Choice
          {...form.bind('authority')}
          label={say.authority}
          options={ask.options.map((value) => ({
            value,
            label: support.authorities[value],
            hint: support.authorityHints[value],
          }))}
        />
      );
    case 'part':
      return <PartPage {...props} part={ask.part} section={ask.section} />;
  }
}

function PartPage({
  form,
  part,
  section,
  words,
}: AskProps & { readonly part: Part; readonly section: string }): JSX.Element {
  const { deciding: say } = words;
  const text = {
    id: part,
    value: form.value.texts[part],
    problem: form.keep.problemOf(part),
    onValue: (value: string) => form.set({ texts: { ...form.value.texts, [part]: value } }),
  };
  return (
    <>
      {part === 'information' && (
        <Checks
          {...form.bind('told')}
          label={say.told}
          options={told.map((value) => ({ value, label: say.toldNames[value] }))}
        />
      )}
      {isLimb(part) && (
        <Choice
          id={`limb-${part}`}
          label={say.parts[part]}
          value={form.value.limbs[part]}
          onValue={(value) => form.set({ limbs: { ...form.value.limbs, [part]: value } })}
          problem={undefined}
          inline
          options={(['can', 'cannot'] as const).map((value) => ({ value, label: say[value] }))}
        />
      )}
      {part === 'document' && (
        <Choice
          {...form.bind('document')}
          id="paper"
          problem={form.keep.problemOf('paper')}
          label={say.document}
          inline
          options={[
            { value: 'seen', label: say.documentSeen },
            { value: 'not-seen', label: say.documentNotSeen },
          ]}
        />
      )}
      <Field
        {...text}
        label={isLimb(part) ? say.evidence : say.parts[part]}
        hint={say.hints[part]}
        lines={5}
      />
      <p class="soft">{say.section(section)}</p>
    </>
  );
}
