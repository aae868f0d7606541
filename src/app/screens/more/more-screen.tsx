import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { version } from '../../../../package.json';
import { ThemeChoice } from '../../pieces/form/theme-choice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { chooseTheme, keptTheme } from './theme-store.ts';
import './more.css';

/** What is looked after once in a while; how the tablet looks; what to know before relying on it. */
export function MoreScreen(): JSX.Element {
  const { more: say } = useAllWords();
  const [theme, setTheme] = useState(keptTheme);
  const parts = [
    { path: paths.staff, name: say.staff, why: say.staffWhy },
    { path: paths.policy, name: say.policy, why: say.policyWhy },
    { path: paths.findings, name: say.findings, why: say.findingsWhy },
    { path: paths.tablets, name: say.tablets, why: say.tabletsWhy },
  ];
  return (
    <>
      <PageHead title={say.title} />
      <ul class="more-links">
        {parts.map(({ path, name, why }) => (
          <li key={path}>
            <a href={to(path)}>{name}</a>
            <span class="soft">{why}</span>
          </li>
        ))}
      </ul>
      <Part title={say.look}>
        <p class="soft">{say.lookWhy}</p>
        <ThemeChoice
          theme={theme}
          onTheme={(picked) => {
            chooseTheme(picked);
            setTheme(picked);
          }}
        />
      </Part>
      <Part title={say.cautions}>
        <ul class="more-cautions">
          {Object.entries(say.cautionList).map(([key, text]) => (
            <li key={key}>{text}</li>
          ))}
        </ul>
      </Part>
      <Part title={say.about}>
        <p>
          {say.aboutWhat} {say.version(version)} {say.licence}
        </p>
      </Part>
    </>
  );
}
