import type { JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import { codeGroups } from './code-groups.ts';
import './code-text.css';

/** A code: groups of four to the eye, sign by sign to the ear, without gaps to the clipboard. */
export function CodeText({ code }: { readonly code: string }): JSX.Element {
  const { scan } = useWords();
  return (
    <span class="code-text">
      <span aria-hidden="true">
        {codeGroups(code).map((group, i) => (
          <span key={i}>{group}</span>
        ))}
      </span>
      <span class="unseen">{scan.spell(code)}</span>
    </span>
  );
}
