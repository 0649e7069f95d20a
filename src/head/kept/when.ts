// When something was done, in the maker's own time.

/** "today at 14:05", "on 3 March 2026 at 14:05". */
export function whenInWords(ms: number, nowMs: number = Date.now()): string {
  const [then, now] = [new Date(ms), new Date(nowMs)];
  const clock = `at ${String(then.getHours()).padStart(2, "0")}:${String(then.getMinutes()).padStart(2, "0")}`;
  if (then.toDateString() === now.toDateString()) return `today ${clock}`;
  return `on ${new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "long", year: "numeric" }).format(then)} ${clock}`;
}
