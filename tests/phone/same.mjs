// node same.mjs MODULE PROGRAM [COUNT [SEED]]
// The module and the command line give the same JSON report (of a demo survey the same page as well),
// byte for byte, and say the same of what is wrong: for every demo survey, every survey of the corpus, every shipped
// ruleset, and COUNT surveys put together at random.
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { spawnSync } from "node:child_process";
import { Module } from "./module.mjs";

const [at, named, count = "200", seed = "1"] = process.argv.slice(2);
const program = resolve(named);                              // it is started in other folders too
const module = new Module(at);
const folder = mkdtempSync(join(tmpdir(), "same-"));
let passed = 0, failed = 0, leftOut = 0;

// What the program prints for this file in this folder; the report may hold nothing at all.
function run(args, cwd) {
  const ran = spawnSync(program, args, { cwd, maxBuffer: 2 ** 30 });
  if (ran.status === null) throw new Error(`${program}: ${ran.error ?? ran.signal}`);
  return { report: ran.stdout, diagnostics: ran.stderr };
}
const today = JSON.parse(run(["check", "demo-surveys/one-railing.csv", "--format", "json"], ".").report).tool.date;

function compare(name, bytes, rules, cwd) {
  let text;
  if (bytes.subarray(0, 2).toString() === "PK") { leftOut++; return; }                     // a workbook: the page reads none
  try { text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes); } catch { leftOut++; return; }  // the page refuses such a file
  const wanted = run(["check", name, "--format", "json", ...rules.flatMap(id => ["--rules", id])], cwd);
  const got = module.ask({ do: "check", files: [{ name, text }], rules, form: "json", today });
  // a ruleset of somebody's own is a file, and there are no files beside a page
  if (/^\s*-->.*\.toml/m.test(wanted.diagnostics.toString()) || /\bmy-|\.toml/.test(text)) { leftOut++; return; }
  if (name.startsWith("demo-surveys/") && rules.length === 0) {
    const page = run(["check", name, "--format", "html"], cwd).report;
    const ours = Buffer.from(module.ask({ do: "check", files: [{ name, text }], rules, form: "html", today }).report);
    if (ours.equals(page)) passed++; else { failed++; console.log(`${name}: the pages differ`); }
  }
  for (const part of ["report", "diagnostics"]) {
    const ours = Buffer.from(got[part] ?? `error: ${got.error}`), theirs = wanted[part];
    if (ours.equals(theirs)) { passed++; continue; }
    failed++;
    const where = ours.findIndex((byte, i) => byte !== theirs[i]);
    const around = b => JSON.stringify(b.subarray(Math.max(0, where - 60), where + 60).toString());
    console.log(`${name} ${rules} ${part}: differs at byte ${where}\n  module  ${around(ours)}\n  program ${around(theirs)}`);
  }
}

for (const file of readdirSync("demo-surveys").filter(f => f.endsWith(".csv"))) compare(`demo-surveys/${file}`, readFileSync(`demo-surveys/${file}`), [], ".");
const corpus = "tests/corpus/surveys";
for (const file of readdirSync(corpus).filter(f => f.endsWith(".csv"))) compare(`${corpus}/${file}`, readFileSync(`${corpus}/${file}`), [], ".");
// rulesets in the module leave their examples out: nothing that judges may go with them
const one = readFileSync("demo-surveys/family-house.csv");
const ids = readdirSync("rulesets").filter(f => f.endsWith(".toml")).map(f => f.replace(".toml", ""));
for (const id of ids) compare("demo-surveys/family-house.csv", one, [id], ".");

// ---- random surveys: readings of every kind, right and wrong ones, in any order
let state = Number(seed) >>> 0 || 1;
const random = n => { state ^= state << 13; state >>>= 0; state ^= state >>> 17; state ^= state << 5; state >>>= 0; return state % n; };
const pick = list => list[random(list.length)];
const items = {
  place: ["landing", "stair", "deck", "balcony", "porch", "window", "roof", "steps", "moon"],
  use: ["dwelling", "public", "workplace"], children: ["14 months", "3 years", "none", "34 in"], drop: ["over 8 ft", "30 1/4 in", "2.6 m", "600 mm", "under 20 in", "12"],
  built: ["1994", "before 1978", "about 1965", "2021"], shared: ["yes", "no"], "dwellings in building": ["1", "2", "12"],
  height: ["33 1/2 in", "36 in", "3'5 3/4\"", "1060 mm", "106,2 cm", "1,250 mm", "reaches 36 in", "below 36 in", "about 5 in", "not reached", "900 mm ± 2 mm"],
  opening: ["4 in ball stops everywhere", "4 in ball passes", "3 1/2 in", "4 3/8 in", "4 3/8 in", "slot 4 1/4 in", "triangle 7 3/4 x 10 in", "rectangle 3 1/2 x 30 in", "circle 5 in", "polygon 0:0 120:0 60:90 mm", "none", "5 to 6 in", "4 in at 38 in"],
  "bottom gap": ["2 in", "4 in ball stops", "none", "100 mm"], "end gap": ["3 in", "none"], "openings checked": ["every one", "some", "one"],
  infill: ["balusters", "cables", "horizontal bars", "glass", "solid", "net"], "infill loose": ["no", "one", "missing"], "moves when pushed": ["no", "a little", "a lot"],
  foothold: ["450 mm high 40 mm deep", "none", "5 in high 2 in deep"], "thing to climb": ["18 in high 5 in away", "none", "yes"], guard: ["present", "none"],
  "post fastening": ["through bolts", "nails", "hidden", "missing", "lag screws"], "fastened to": ["joist", "drywall only", "hidden"], "notched post": ["yes", "no"],
  "stair triangle": ["rise 7 3/4 going 10 lift 2 in", "none", "6 in ball stops"], handrail: ["top of the guard", "separate", "none"], "handrail height": ["34 in", "38 in"],
  condition: ["sound", "rot", "none seen", "broken glass"], "post section": ["3 1/2 x 3 1/2 in"], "post spacing": ["6 ft"], "post fasteners": ["2 x 1/2 in x 6 in"], tape: ["class I", "class II"],
};
const names = Object.keys(items), cell = text => /[",\n]/.test(text) || random(20) === 0 ? `"${text.replace(/"/g, '""')}"` : text;
function survey() {
  const rows = [];
  for (let guard = 0; guard <= random(4); guard++) {
    const name = `${pick(["landing", "back stair", "deck", "balcony", "g"])} ${guard}`, unit = pick(["", "2A", "3B"]);
    for (let n = random(14); n >= 0; n--) { const item = pick(names); rows.push([unit, name, item, cell(pick(items[item])), pick(["", "", "", "sags", '"by hand, twice"'])].join(",")); }
  }
  if (random(2)) rows.push(`,,${pick(["children,14 months", "use,dwelling", "read to,1/16 in", "tape,class II", "default unit,in"])},`);
  if (random(15) === 0) rows.push("a short row");
  for (let i = rows.length - 1; i > 0; i--) { const j = random(i + 1); [rows[i], rows[j]] = [rows[j], rows[i]]; }
  return `unit,guard,item,reading,note\n${rows.join(pick(["\n", "\r\n"]))}\n`;
}
for (let n = 0; n < Number(count); n++) {
  const text = survey(), name = `random-${n}.csv`;
  writeFileSync(join(folder, name), text);
  const before = failed;
  compare(name, Buffer.from(text), random(3) ? [pick(ids)] : random(2) ? [pick(ids), pick(ids)] : [], folder);
  if (failed === before) rmSync(join(folder, name)); else console.log(`kept: ${join(folder, name)}`);
}
console.log(`${passed} parts alike, ${failed} different; ${leftOut} surveys left out (no UTF-8, a workbook, or rules of their own in a file); memory ${(module.pages / 16).toFixed(1)} MiB`);
process.exitCode = failed || passed < 300 ? 1 : 0;
