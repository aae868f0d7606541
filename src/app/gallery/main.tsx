import { render } from 'preact';
import '../look/look.css';
import './gallery.css';
import { applyTheme, themeOf } from '../pieces/form/theme.ts';
import { english } from '../words/en.ts';
import { WordsProvider } from '../words/use-words.ts';
import { Gallery } from './gallery.tsx';
import { pseudo } from './pseudo-words.ts';

const asked = new URLSearchParams(location.search);
const spoken = english({ timeZone: 'Europe/London', person: 'resident' });
const words = asked.get('words') === 'pseudo' ? pseudo(spoken) : spoken;
applyTheme(document.documentElement, themeOf(asked.get('theme')));
document.documentElement.dir = asked.get('dir') ?? words.language.direction;

const root = document.getElementById('app');
if (root === null) throw new Error('no #app in gallery/index.html');
render(
  <WordsProvider value={words}>
    <Gallery show={asked.get('show') ?? 'contents'} />
  </WordsProvider>,
  root,
);
