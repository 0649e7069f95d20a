// `npm run bench`: seeded, warmed, each against its peer in the same run, with a checksum of the answers.
import { benchDepth } from "./depth.ts";
import { benchExamining } from "./examining.ts";
import { benchFiles } from "./files.ts";
import { benchGaps } from "./gaps.ts";
import { benchKeystroke } from "./keystroke.ts";
import { figure, table } from "./measure.ts";
import { benchMeshes } from "./meshes.ts";
import { benchNumbers } from "./numbers.ts";
import { benchSearching } from "./searching.ts";
import { benchWholeTurn } from "./whole-turn.ts";

process.stdout.write(`${benchExamining()}\n${benchGaps()}\n`);
process.stdout.write(table("Meshes, one wheel, against ExtrudeGeometry", [
  ["", "ours ms", "peer ms", "times", "points", "triangles", "checksum mm³"],
  ...benchMeshes().map((b) => [b.name, figure(b.oursMs), figure(b.peerMs), `${figure(b.times)} ×`, `${b.points}`, `${b.triangles}`, b.checksum.toFixed(3)]),
]));
process.stdout.write(`\n${benchKeystroke()}`);
process.stdout.write(`\n${benchSearching()}`);
process.stdout.write(`\n${benchWholeTurn()}`);
process.stdout.write(`\n${benchNumbers()}`);
process.stdout.write(`\n${benchDepth()}`);
process.stdout.write(`\n${await benchFiles()}`);
