/**
 * Seconds as a clock shows them.
 *
 * @example clockTime(75) // => '1:15'
 * @example clockTime(3723.4) // => '1:02:03'
 */
export function clockTime(seconds: number): string {
  const whole = Math.floor(seconds);
  const [h, m, s] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  const two = (n: number) => String(n).padStart(2, '0');
  return h > 0 ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
}
