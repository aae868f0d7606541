/** What the page that leads a tablet to trust this home's server says. */
export interface Guide {
  readonly title: string;
  /** Where the app is, `https://192.168.1.20:8240`. */
  readonly appUrl: string;
  /** SHA-256 of the authority's certificate in pairs. */
  readonly fingerprint: string;
}

/** Menus as their makers named them when this was written, from memory; they change. */
const steps: readonly (readonly [string, readonly string[]])[] = [
  [
    'iPad or iPhone',
    [
      'Open this page in Safari. Touch “Download the certificate”, then “Allow”.',
      'Open Settings. Touch “Profile downloaded”, then “Install”.',
      'Open Settings, General, About, “Certificate trust settings”. Switch Tallyround on.',
    ],
  ],
  [
    'Android tablet',
    [
      'Touch “Download the certificate”.',
      'Open Settings and search for “CA certificate”. Touch it, then “Install anyway”.',
      'Choose the file tallyround.crt from Downloads.',
    ],
  ],
  [
    'Chromebook',
    [
      'Touch “Download the certificate”.',
      'Open chrome://certificate-manager, then “Installed by you”, then “Import”.',
      'Choose tallyround.crt and allow it for websites.',
    ],
  ],
  [
    'Windows',
    [
      'Download the certificate and open it. Press “Install certificate”.',
      'Choose “Local machine”, then “Place all certificates in the following store”.',
      'Choose “Trusted root certification authorities”, then finish.',
    ],
  ],
  [
    'Mac',
    [
      'Download the certificate and open it. Keychain Access opens.',
      'Find Tallyround in the list, open it, open “Trust”.',
      'At “When using this certificate” choose “Always trust”.',
    ],
  ],
];

export function guidePage(guide: Guide): string {
  const title = escape(guide.title);
  return `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Get a tablet ready for ${title}</title>
<link rel="stylesheet" href="/guide.css">
</head>
<body>
<main>
<h1>Get a tablet ready for ${title}</h1>
<p>Do this once on each tablet. Then it knows this home’s own server, works without a signal, and can use its camera.</p>
<ol>
<li>
<h2>Check the number</h2>
<p>The server shows this same number on its own screen. Compare the first four pairs and the last four. If they differ, stop and tell whoever looks after the server.</p>
<p class="number">${pairs(guide.fingerprint)}</p>
</li>
<li>
<h2>Download and trust</h2>
<p><a class="do" href="/tallyround.crt">Download the certificate</a></p>
${steps.map(([name, list]) => instructions(name, list)).join('\n')}
<p>It is only good for addresses inside a home. It cannot be used for any site on the internet.</p>
</li>
<li>
<h2>Open Tallyround</h2>
<p><a class="do" href="${escape(guide.appUrl)}">Open ${escape(guide.appUrl)}</a></p>
<p>If the tablet warns you, the certificate is not trusted yet. Go back to step 2.</p>
</li>
</ol>
<h2>Another tablet</h2>
<p>Point its camera at this to open this page there.</p>
<p><img class="code" src="/guide.svg" alt="QR code with the address of this page" width="240" height="240"></p>
</main>
</body>
</html>
`;
}

const instructions = (name: string, list: readonly string[]): string =>
  `<details><summary>${name}</summary><ol>${list.map((step) => `<li>${step}</li>`).join('')}</ol></details>`;

/** In groups of four pairs, so that they can be read aloud and compared. */
const pairs = (fingerprint: string): string =>
  (fingerprint.match(/(?:..:?){1,4}/g) ?? [])
    .map((group) => `<span>${group.replace(/:$/, '').replaceAll(':', ' ')}</span>`)
    .join(' ');

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const escape = (text: string): string => text.replace(/[&<>"']/g, (c) => entities[c] ?? c);

export const GUIDE_CSS = `
:root { color-scheme: light dark; --paper: #f6f2e9; --ink: #1e2a30; --act: #1d5b5e; --on-act: #fffdf8; }
@media (prefers-color-scheme: dark) { :root { --paper: #171c1f; --ink: #e9e4d8; --act: #8fd0d2; --on-act: #10181a; } }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1.125rem/1.5 system-ui, sans-serif; }
main { max-width: 40rem; margin: 0 auto; padding: 1.5rem; }
h1 { font-size: 1.9rem; line-height: 1.2; } h2 { font-size: 1.35rem; margin-bottom: .25rem; }
.number { font: 600 1.25rem/1.8 ui-monospace, monospace; }
.number span { white-space: nowrap; margin-right: 1rem; }
.do { display: inline-block; min-height: 48px; padding: .7rem 1.2rem; box-sizing: border-box; border-radius: .6rem; background: var(--act); color: var(--on-act); font-weight: 600; overflow-wrap: anywhere; }
summary { min-height: 48px; display: flex; align-items: center; cursor: pointer; font-weight: 600; text-decoration: underline; }
:focus-visible { outline: 3px solid var(--act); outline-offset: 3px; }
.code { background: #fff; padding: .5rem; }
`;
