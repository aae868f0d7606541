/** Small things that many screens say. */
export const partsWords = () => ({
  day: 'Day',
  time: 'Time',
  /** Says more to a screen reader, where several buttons read alike. */
  about: (action: string, about: string) => `${action}: ${about}`,
  degrees: (least: number, most: number) => `${least} to ${most} °C`,
});
