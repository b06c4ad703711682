/** Random releases, one after another, judged from what they print: none may give a small count away. `run.mjs leaks 300`. */
import loadHighs from "highs";
import { highsSolver } from "../../src/release/highs-solver";
import { audit } from "../release/audit/audit";
import { caseOf, release } from "../release/audit/cases";
import { randomProgram } from "../release/audit/random-program";

async function main(): Promise<void> {
  const [from, to] = [Number(process.argv[2] ?? 0), Number(process.argv[3] ?? 300)];
  const highs = await loadHighs();
  const solver = highsSolver(highs);
  for (let seed = from; seed < to; seed += 1) {
    const began = performance.now();
    const own = caseOf(seed);
    const program = randomProgram(seed);
    let words = "";
    let middle = began;
    try {
      const { releases, refused } = release(program, own, solver);
      middle = performance.now();
      words = `${releases.length} released, ${refused} refused, `;
      const { small, leaks } = audit(program, releases, own.minimum, highs);
      words += `${small} small, ${leaks.length} leaks: ${leaks.slice(0, 5).join(" ; ")}`;
    } catch (error) {
      words += String(error) + (error as Error).stack?.split("\n").slice(1, 9).join("\n");
    }
    console.log(seed, own.name, own.minimum, Math.round(middle - began), Math.round(performance.now() - middle), words);
  }
}

void main();
