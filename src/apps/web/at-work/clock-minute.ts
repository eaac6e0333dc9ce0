/** Minutes after midnight on this device's clock. */
export function clockMinute(): number {
  const clock = new Date();
  return clock.getHours() * 60 + clock.getMinutes();
}
