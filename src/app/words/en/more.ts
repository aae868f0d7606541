/** The last part of the app: what is looked after once in a while. */
export const moreWords = () => ({
  title: 'More',
  staff: 'Staff',
  staffWhy: 'Who works here, their training, whom they know.',
  policy: 'Policy',
  policyWhy: 'The rules this home works by, and where they come from.',
  tablets: 'Tablets',
  tabletsWhy: 'Which tablets belong here, and their keys.',
  findings: 'What did not fit',
  findingsWhy: 'Things that cannot all be right, and how each was settled.',
  look: 'How it looks',
  lookWhy: 'For this tablet alone. Night does not light up a bedroom.',
  cautions: 'Before you rely on it',
  cautionList: {
    people: 'It never says what anybody has. Ask a clinician.',
    policy:
      'Your own policy, the health protection team, the laboratory and the leaflet come first.',
    urgent: 'If somebody is in danger, ring for help before you write.',
    no: 'A no is a no. Nobody may be held or pressed for a swab.',
  },
  about: 'About',
  aboutWhat: 'Tallyround counts each swab from the person to the result.',
  version: (version: string) => `Version ${version}.`,
  licence: 'Free to use and to change, under the MIT licence. It comes with no promise.',
});
