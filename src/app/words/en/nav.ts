export const navWords = () => ({
  now: 'Now',
  rounds: 'Rounds',
  people: 'People',
  results: 'Results',
  kits: 'Kits',
  more: 'More',
  notHere: 'There is nothing at this address.',
  backToNow: 'Back to Now',
});
