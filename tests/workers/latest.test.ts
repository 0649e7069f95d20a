import { describe, expect, it } from "vitest";
import { latestOnly } from "../../src/workers/latest.ts";

/** A port whose answers come when the test says so. */
function slowPort() {
  const asked: { question: number; give: (a: string) => void; fail: (e: Error) => void }[] = [];
  return { asked, ask: (question: number) => new Promise<string>((give, fail) => { asked.push({ question, give, fail }); }) };
}
const settled = () => new Promise<void>((done) => { setImmediate(done); });

describe("the latest question", () => {
  it("wins: of three asked while one is in hand only the last is sent on, and only it is answered", async () => {
    const port = slowPort(), latest = latestOnly(port);
    const heard: (string | null)[] = [];
    for (const q of [1, 2, 3]) latest.ask(q, (a) => heard.push(a));
    port.asked[0]?.give("one");
    await settled();
    port.asked[1]?.give("three");
    await settled();
    expect(port.asked.map((a) => a.question)).toEqual([1, 3]);
    expect(heard).toEqual(["three"]);
  });

  it("is answered with null where it failed, and the next is asked as ever", async () => {
    const port = slowPort(), latest = latestOnly(port);
    const heard: (string | null)[] = [];
    latest.ask(1, (a) => heard.push(a));
    port.asked[0]?.fail(new Error("it stopped"));
    await settled();
    latest.ask(2, (a) => heard.push(a));
    port.asked[1]?.give("two");
    await settled();
    expect(heard).toEqual([null, "two"]);
  });

  it("is answered to nobody once forgotten", async () => {
    const port = slowPort(), latest = latestOnly(port);
    const heard: (string | null)[] = [];
    latest.ask(1, (a) => heard.push(a));
    latest.forget();
    port.asked[0]?.give("one");
    await settled();
    expect(heard).toEqual([]);
  });
});
