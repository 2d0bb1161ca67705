/** The day and the time on the reader's own clock, as files have them: 2030-12-31 and 09:05. */
export function dayAndTime(now = new Date()): { day: string; time: string } {
  const two = (part: number) => String(part).padStart(2, '0');
  return {
    day: [now.getFullYear(), now.getMonth() + 1, now.getDate()].map(two).join('-'),
    time: [now.getHours(), now.getMinutes()].map(two).join(':'),
  };
}
