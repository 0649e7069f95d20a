import { describe, expect, it } from "vitest";
import { STOPPED, workerPort } from "../../src/workers/port.ts";

/** A worker that says what the test lets it say. */
class Puppet extends EventTarget {
  readonly asked: { readonly number: number; readonly question: unknown }[] = [];
  ended = false;
  postMessage(asked: { number: number; question: unknown }) { this.asked.push(asked); }
  terminate() { this.ended = true; }
  say(data: unknown) { this.dispatchEvent(new MessageEvent("message", { data })); }
}

function puppets() {
  const all: Puppet[] = [];
  const port = workerPort<string, string>(() => {
    const puppet = new Puppet();
    all.push(puppet);
    return puppet as unknown as Worker;
  });
  return { all, port };
}

describe("a worker as a port", () => {
  it("gives each question its own answer, in whatever order they come, and tells how far each is", async () => {
    const { all, port } = puppets(), told: number[] = [];
    const one = port.ask("one", (done) => told.push(done)), two = port.ask("two");
    expect(all.length).toBe(1);
    const [first, second] = all[0]!.asked;
    all[0]!.say({ number: first!.number, done: 0.5 });
    all[0]!.say({ number: second!.number, answer: "2" });
    all[0]!.say({ number: first!.number, done: 1 });
    all[0]!.say({ number: first!.number, answer: "1" });
    expect(await Promise.all([one, two])).toEqual(["1", "2"]);
    expect(told).toEqual([0.5, 1]);
  });
  it("fails what was asked when it is stopped, and starts another worker for the next question", async () => {
    const { all, port } = puppets();
    const one = port.ask("one");
    port.stop();
    await expect(one).rejects.toThrow(STOPPED);
    expect(all[0]!.ended).toBe(true);
    const two = port.ask("two");
    all[0]!.dispatchEvent(new Event("error"));
    all[1]!.say({ number: all[1]!.asked[0]!.number, answer: "2" });
    expect(await two).toBe("2");
  });
  it("passes on why a question failed, and fails all that a dying worker was asked", async () => {
    const { all, port } = puppets();
    const one = port.ask("one"), two = port.ask("two"), three = port.ask("three");
    all[0]!.say({ number: all[0]!.asked[0]!.number, fault: "it cannot be drawn" });
    await expect(one).rejects.toThrow("it cannot be drawn");
    all[0]!.dispatchEvent(new Event("error"));
    await expect(two).rejects.toThrow("stopped");
    await expect(three).rejects.toThrow("stopped");
  });
});
