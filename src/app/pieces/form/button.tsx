import type { ComponentChildren, JSX } from 'preact';
import { Icon, type IconName } from '../icon/icon.tsx';
import './button.css';

interface Common {
  readonly children: ComponentChildren;
  /** One main action a page; plain for the rest; quiet where it must not compete. */
  readonly kind?: 'main' | 'plain' | 'quiet';
  readonly icon?: IconName | undefined;
  /** Says more to a screen reader, where several buttons read alike. Starts with the visible words. */
  readonly label?: string | undefined;
}

export type ButtonProps = Common &
  ({ readonly href: string } | { readonly onPress: () => void } | { readonly submit: true });

/** An ordinary button, or a link that looks like one because it starts something. */
export function Button(props: ButtonProps): JSX.Element {
  const { children, kind = 'plain', icon, label } = props;
  const inside = (
    <>
      {icon !== undefined && <Icon name={icon} />}
      <span>{children}</span>
    </>
  );
  if ('href' in props) {
    return (
      <a class="button" data-kind={kind} href={props.href} aria-label={label}>
        {inside}
      </a>
    );
  }
  return (
    <button
      class="button"
      data-kind={kind}
      type={'submit' in props ? 'submit' : 'button'}
      onClick={'onPress' in props ? props.onPress : undefined}
      aria-label={label}
    >
      {inside}
    </button>
  );
}
