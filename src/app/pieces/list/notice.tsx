import type { ComponentChildren, JSX } from 'preact';
import { Icon, type IconName } from '../icon/icon.tsx';
import './notice.css';

export type NoticeKind = 'helps' | 'stop' | 'look' | 'note';

export interface NoticeProps {
  readonly kind: NoticeKind;
  /** Carries the meaning in words, since the mark and colour only help. */
  readonly title: ComponentChildren;
  readonly children?: ComponentChildren;
  /** One thing to do about it, as a Button. */
  readonly action?: ComponentChildren;
}

const marks: Readonly<Record<NoticeKind, IconName>> = {
  helps: 'helps',
  stop: 'hand',
  look: 'look',
  note: 'note',
};

/** A short word to whoever stands here: what helps, what means stop, what to look at, what to know. */
export function Notice({ kind, title, children, action }: NoticeProps): JSX.Element {
  return (
    <div class="notice" data-kind={kind}>
      <Icon name={marks[kind]} />
      <p>
        <b>{title}</b> {children}
      </p>
      {action}
    </div>
  );
}
