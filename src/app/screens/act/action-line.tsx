import type { JSX } from 'preact';
import type { Action } from '../../../care/results/actions.ts';
import { isSettled } from '../../../care/results/actions.ts';
import type { Instant } from '../../../care/time.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Bead } from '../../pieces/frame/bead.tsx';
import type { BeadState } from '../../pieces/frame/bead-state.ts';
import { useAllWords } from '../../words/use-all-words.ts';
import { FinishForm } from './finish-form.tsx';
import { NameForm } from './name-form.tsx';

export type ActionForm = 'name' | 'done' | 'not-needed';

interface ActionLineProps {
  readonly action: Action;
  readonly form: ActionForm | undefined;
  readonly onForm: (form: ActionForm | undefined) => void;
}

/** One thing that a result asks for, how far it is, and what can be said about it. */
export function ActionLine({ action, form, onForm }: ActionLineProps): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.acting;
  const what = words.now.actions[action.kind];
  const state = stateOf(action, desk.now());
  const settled = isSettled(action);
  return (
    <li class="action" data-settled={settled}>
      <Bead state={state} />
      <div class="action-what">
        <h3>
          {action.before !== undefined && !settled ? say.again[action.kind] : what}
          <span class="unseen">: {words.frame.states[state]}</span>
        </h3>
        <Standing action={action} />
      </div>
      {!settled && form === undefined && (
        <div class="button-row">
          <Button icon="person" onPress={() => onForm('name')} label={say.giveWhat(what)}>
            {say.give}
          </Button>
          <Button icon="tick" onPress={() => onForm('done')} label={say.doneWhat(what)}>
            {say.doneNow}
          </Button>
          <Button kind="quiet" onPress={() => onForm('not-needed')} label={say.notWhat(what)}>
            {say.notNow}
          </Button>
        </div>
      )}
      {form === 'name' && <NameForm action={action} onClose={() => onForm(undefined)} />}
      {(form === 'done' || form === 'not-needed') && (
        <FinishForm key={form} action={action} outcome={form} onClose={() => onForm(undefined)} />
      )}
    </li>
  );
}

function stateOf(action: Action, now: Instant): BeadState {
  if (action.stopped !== undefined) return 'unneeded';
  if (action.done !== undefined) return action.done.data.outcome === 'done' ? 'done' : 'unneeded';
  if (now > action.due || action.before !== undefined) return 'look';
  return action.named === undefined ? 'todo' : 'hand';
}

function Standing({ action }: { readonly action: Action }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.acting;
  const names = namesIn(desk.home, words.refusals.somebody);
  const { done, before, named, stopped, due, rule } = action;
  if (stopped !== undefined) return <p>{say.stopped[stopped]}</p>;
  if (done !== undefined) {
    const said = done.data.outcome === 'done' ? say.done : say.notNeeded;
    return (
      <p>
        {said(names.staff(done.by), done.at)} {done.private?.note ?? ''}
      </p>
    );
  }
  const late = desk.now() > due;
  const when = late ? (rule.withinHours === 0 ? say.atOnce : say.late(due)) : say.due(due);
  return (
    <>
      {before !== undefined && (
        <p class="action-again">
          {say.before(words.now.actions[action.kind], names.staff(before.by), before.at)}
        </p>
      )}
      <p>
        {named === undefined ? say.nobody : say.named(names.staff(named.data.who))}{' '}
        <span data-late={late}>{say.forRole(when, words.roles[rule.role])}</span>
      </p>
      <p class="field-hint">{say.policy(rule.source)}</p>
    </>
  );
}
