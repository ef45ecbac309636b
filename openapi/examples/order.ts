// Order a pattern, read its seams, and be told what is wrong with an order: a small typed client.
//
//   npx openapi-typescript http://127.0.0.1:8000/openapi.json --default-non-nullable false -o tapeline.d.ts
//   npm install openapi-fetch && npx tsc && node order.js http://127.0.0.1:8000
//
// The person is invented. The compiler knows every garment, option, measure and answer.

import createClient from "openapi-fetch";
import type { components, paths } from "./tapeline.js";

type Order = components["schemas"]["Order"];
type Pattern = components["schemas"]["PatternAnswer"];
type Problem = components["schemas"]["Problem"];

const address = process.argv[2] ?? "http://127.0.0.1:8000";
const tapeline = createClient<paths>({ baseUrl: address });

/** What a pattern costs a sewer to know: the verdict, and each seam with what it measures. */
function read(pattern: Pattern): void {
  console.log(`${pattern.garment.kind}: ${pattern.verdict}, ${pattern.pieces.length} pieces`);
  for (const seam of pattern.seams) {
    const [one, two] = seam.sides.map((side) =>
      side.reduce((sum, part) => sum + part.length * part.count, 0),
    );
    const state = seam.matches ? "matches" : "DOES NOT MATCH";
    console.log(`seam ${seam.name}: ${one!.toFixed(1)} to ${two!.toFixed(1)} mm, ${state}`);
  }
}

/** What to change in an order, field by field. */
function mend(problem: Problem): void {
  console.log(`${problem.status} ${problem.title}`);
  for (const error of problem.errors) console.log(`at ${error.pointer}: ${error.detail}`);
}

async function order(wanted: Order): Promise<void> {
  const { data, error } = await tapeline.POST("/v1/patterns", { body: wanted });
  if (error) mend(error as Problem);
  else read(data as Pattern);
}

const trousers: Order = {
  unit: "cm",
  figure: "women",
  measurements: {
    waist_girth: 74,
    hip_girth: 101,
    side_waist_to_hip: 20.5,
    body_rise: 27.5,
    outside_leg_length: 103,
  },
  garment: { kind: "trousers", method: "block" },
};

await order(trousers);
await order({ ...trousers, measurements: { ...trousers.measurements, waist_girth: 740 } });
