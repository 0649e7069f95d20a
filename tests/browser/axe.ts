// What axe finds wrong with a page as it stands.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
interface Violation { readonly id: string; readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[] }

export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const found = await page.evaluate(async () => {
    const axe = (window as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } }).axe;
    return (await axe.run()).violations;
  });
  return found.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html} ${n.failureSummary ?? ""}`));
}
