/** Small things that many screens say. */
export const partsWords = () => ({
  day: 'Day',
  time: 'Time',
  degrees: (least: number, most: number) => `${least} to ${most} °C`,
});
