// PAGE=page.html PROGRAM=guardrule node --test tests/phone/page.test.mjs
import { copyFileSync, mkdtempSync, readFileSync, statSync, writeFileSync, mkdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { spawnSync } from "node:child_process";
import assert from "node:assert/strict";
import test from "node:test";
import { axe, closeAll, heading, id, open, PAGE, Person, rulesOf, skip, survey, walkOne } from "./browser.mjs";

const PROGRAM = process.env.PROGRAM ?? "target/debug/guardrule";
const shots = process.env.SHOTS;
if (shots) mkdirSync(shots, { recursive: true });
const shot = async (tab, name) => { if (shots) await tab.screenshot({ path: join(shots, `${name}.png`) }); };
test.afterEach(closeAll);

const landing = {
  children: async p => p.write("14 months"), look: async p => p.press("nothing of these"), touch: async p => p.press("nothing"), "drop beyond": async p => p.press("yes"),
  infill: async p => p.press("balusters (upright bars)"), gaps: async p => p.press("4 in"), height: async p => p.write("3", "5", "1/2", "in"), climb: async p => p.press("nothing"),
  "post fastening": async p => p.press("hidden"), photo: skip, otherwise: skip, danger: async () => { throw new Error("no danger here"); },
};
const deck = { ...landing, touch: async p => p.press("it moves a lot"), closed: async p => p.press("yes"), "by eye": skip, danger: async p => { assert.match(await heading(p.tab), /Keep everybody off it/); await p.press("Go on"); } };
const check = (text, form = "json") => {
  const folder = mkdtempSync(join(tmpdir(), "check-")), at = join(folder, "railings.csv");
  writeFileSync(at, text);
  return spawnSync(PROGRAM.startsWith("/") ? PROGRAM : join(process.cwd(), PROGRAM), ["check", "railings.csv", "--format", form], { cwd: folder, maxBuffer: 2 ** 28 }).stdout.toString();
};

/// Alike to the last sign; else where they part.
function same(ours, theirs) {
  if (ours === theirs) return assert.ok(theirs.length > 1000);
  const at = [...ours].findIndex((sign, n) => sign !== theirs[n]);
  assert.fail(`they part at ${at}: page …${ours.slice(at - 60, at + 60)}…, command line …${theirs.slice(at - 60, at + 60)}…`);
}

test("the file can be sent: no more than a megabyte", () => {
  const { size } = statSync(PAGE);
  console.log(`the page: ${size} bytes`);
  assert.ok(size > 500_000 && size <= 1_000_000, `${size}`);
});

for (const by of ["touch", "keyboard"]) test(`a walk of three railings by ${by}, a danger in the middle, ends in the report of the command line`, async () => {
  const b = await open(); await b.goto();
  assert.equal(await b.tab.getAttribute("html", "data-ready"), "yes", b.faults.join("\n"));
  const person = new Person(b.tab, by);
  await rulesOf(person, "Ohio", /flat/);
  if (await id(b.tab) === "children") await person.write("14 months");
  const begun = [person.acts, person.keys];
  const first = await walkOne(person, "landing", landing);
  const taps = person.acts - begun[0], keys = person.keys - begun[1];
  const second = await walkOne(person, "deck", deck);
  assert.ok(second.includes("DANGER"), String(second));
  const third = await walkOne(person, "balcony", landing);
  await person.press("No more railings");
  for (let n = 0; n < 5 && await id(b.tab) !== "finished"; n++) await skip(person);
  await b.tab.waitForSelector("#report");
  console.log(`${by}: landing ${first.length} questions, ${by === "touch" ? `${taps} taps` : `${keys} keys`}: ${first.join(", ")}; deck: ${second.join(", ")}; balcony ${third.length}`);
  const text = await survey(b.tab);
  assert.match(text, /deck,moves when pushed,a lot/);
  const ours = await b.tab.evaluate(() => core.ask({ do: "check", files: [{ name: "railings.csv", text: state.survey }], form: "json", today: today() }).report);
  same(ours, check(text));
  const html = await b.tab.evaluate(() => core.ask({ do: "check", files: [{ name: "railings.csv", text: state.survey }], form: "html", today: today() }).report);
  same(html, check(text, "html"));
  const framed = b.tab.frames().find(f => f !== b.tab.mainFrame());
  assert.match(await framed.textContent("body"), /deck/);
  assert.match(await b.tab.textContent(".say"), /deck: Keep everybody off it/);
  assert.deepEqual(b.asked.filter(url => !/^(file|data|blob|about):/.test(url)), []);
  assert.equal(b.asked.filter(url => url.startsWith("file:")).length, 1, "one file is asked for");
  assert.deepEqual(b.faults, []);
  await shot(b.tab, `end-${by}`);
  await b.close();
});

test("times: plain and with the processor six times slower", async () => {
  const found = {};
  // a page with nothing in it: what the browser takes for itself, beside ours
  const empty = join(mkdtempSync(join(tmpdir(), "empty-")), "empty.html");
  writeFileSync(empty, '<!doctype html><html lang="en"><title>Empty</title><h1>Empty</h1><script>times = { start: performance.now() };</script></html>\n');
  // when the document was made, when its script began, when its first text was painted, which is the first
  // question of ours; from the start of the navigation
  const shown = tab => tab.evaluate(async () => {
    const painted = await new Promise(done => new PerformanceObserver(list => list.getEntriesByName("first-contentful-paint").forEach(one => done(one.startTime))).observe({ type: "paint", buffered: true }));
    return [performance.timing.domLoading - performance.timing.navigationStart, times.start, painted].map(Math.round);
  });
  const said = ([made, begun, painted]) => `painted after ${painted} ms, ${painted - made} ms after the document was made (script begun: ${begun - made} ms)`;
  // a finger stays down a while, and the page works meanwhile; lifted at once, nothing is won
  for (const [rate, down] of [[1, 60], [6, 60], [6, 0]]) {
    const nothing = await open({ page: empty, ready: false });
    await (await nothing.context.newCDPSession(nothing.tab)).send("Emulation.setCPUThrottlingRate", { rate });
    await nothing.goto();
    const least = await shown(nothing.tab);
    await nothing.close();
    const b = await open();
    const cdp = await b.context.newCDPSession(b.tab);
    await cdp.send("Emulation.setCPUThrottlingRate", { rate });
    // what the page's own thread takes of a processor, whatever else runs beside it
    await cdp.send("Performance.enable", { timeDomain: "threadTicks" });
    const taken = async () => (await cdp.send("Performance.getMetrics")).metrics.find(one => one.name === "TaskDuration").value * 1000;
    await b.goto();
    const readied = await taken();
    const [first, ready] = await b.tab.evaluate(() => [times.first, times.ready].map(Math.round)), ours = await shown(b.tab);
    assert.ok(ours[2] > 0, "the first question was painted");
    await b.tab.waitForFunction(() => times.warm, null, { timeout: 60000 });
    const person = new Person(b.tab, "touch");
    await rulesOf(person, "Ohio", /flat/);
    // from the finger to the next question painted, as the browser itself tells it
    await b.tab.evaluate(() => { globalThis.felt = []; new PerformanceObserver(list => felt.push(...list.getEntries().filter(one => one.interactionId).map(one => one.duration))).observe({ type: "event", durationThreshold: 16 }); });
    const rest = () => new Promise(done => setTimeout(done, 300 + 60 * rate)), answers = [];
    for (let n = 0; n < 30; n++) {
      const [now, finished, keys] = await b.tab.evaluate(() => [state.question.id, state.question.is_name && state.guards > 0, state.question.choices.map(one => one.says)]);
      if (finished) break;
      const wish = { children: "14 months", railing: "landing", height: "35 1/2 in" }[now];
      if (wish) await b.tab.evaluate(text => { const field = $("answer"); field.value = text; field.dispatchEvent(new Event("input")); }, wish);
      const label = wish ? "Next" : ["nothing of these", "nothing", "yes", "balusters (upright bars)", "4 in", "hidden"].find(one => keys.includes(one)) ?? await b.tab.evaluate(() => upper(state.question.enter));
      // a finger alone: no helper looks for the button while the clock runs
      const [x, y] = await b.tab.evaluate(label => {
        const at = [...document.querySelectorAll("#screen button")].find(one => one.textContent === label && one.offsetParent);
        at.scrollIntoView({ block: "center" });
        const box = at.getBoundingClientRect();
        return [box.x + box.width / 2, box.y + box.height / 2];
      }, label);
      await rest();
      await b.tab.evaluate(() => { felt.length = 0; });
      const before = await taken();
      await cdp.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [{ x, y }] });
      if (down) await new Promise(done => setTimeout(done, down));
      await cdp.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
      await rest();
      answers.push([now, Math.round(await taken() - before), Math.max(0, ...await b.tab.evaluate(() => felt))]);
      assert.notEqual(await b.tab.evaluate(() => state.question.id), now, `nothing came of ${label}`);
    }
    assert.ok(answers.length > 9, String(answers));
    found[rate] = { readied, worst: Math.max(...answers.map(([, ms]) => ms)) };
    const [slow, , felt] = answers.reduce((one, other) => (other[2] > one[2] ? other : one));
    console.log(`rate ${rate}, finger down ${down} ms: the first question is ${said(ours)}, an empty page ${said(least)}; it can be answered after ${first} ms, and the answer is taken after ${ready} ms; the worst tap: ${slow} ${felt} ms; ${JSON.stringify(await b.tab.evaluate(() => times))}; processor: until ready ${Math.round(readied)} ms; a tap of each answer, all work and until it is painted: ${answers.map(([q, ms, felt]) => `${q} ${ms}/${felt}`).join(", ")}`);
    await b.close();
  }
  // a browser that was open already, as on a phone: a new tab each time
  const b = await open(), painted = [];
  await b.goto();
  for (let n = 0; n < 7; n++) {
    const tab = await b.context.newPage();
    await (await b.context.newCDPSession(tab)).send("Emulation.setCPUThrottlingRate", { rate: 6 });
    await b.goto(tab);
    painted.push((await shown(tab))[2]);
    await tab.close();
  }
  await b.close();
  console.log(`rate 6, in a browser that was open: the first question is painted after ${painted.sort((one, other) => one - other).join(", ")} ms`);
  // how long is told above; a busy machine is no fault of the page
  assert.ok(found[1].readied > 0 && found[1].worst > 0, "something was measured");
});

test("what is tapped while the page still unpacks itself is noted at once and not lost", async () => {
  const b = await open({ ready: false });
  const cdp = await b.context.newCDPSession(b.tab);
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: 20 });
  await b.goto();
  const tap = place => b.tab.evaluate(place => { $("answer").value = place; document.querySelector("#screen form").requestSubmit(); return [Boolean(core), $("notice").textContent]; }, place);
  assert.deepEqual(await tap("Utah"), [false, "Noted: Utah. One moment, the rules are being unpacked."]);
  assert.match((await tap("Ontario"))[1], /^Noted: Ontario/);
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  await b.tab.waitForFunction(() => document.querySelector("#screen h1").textContent === "Before you begin", null, { timeout: 60000 });
  assert.match(await b.tab.textContent("#screen"), /ontario-2012/, "of two taps the last one counts");
  assert.equal(await b.tab.textContent("#notice"), "");
  assert.deepEqual(b.faults, []);
  await b.close();
});

test("what was answered is there after a restart, at the same question", async () => {
  const a = await open(); await a.goto();
  const person = new Person(a.tab, "touch");
  await rulesOf(person, "Ontario", /house/);
  if (await id(a.tab) === "children") await person.write("3 years");
  await person.write("back stair");
  await landing.look(person); await landing.touch(person);
  const [text, now] = [await survey(a.tab), await id(a.tab)];
  assert.match(await a.tab.textContent("#kept"), /^Kept on this phone/);
  await a.close(true);
  const b = await open({ profile: a.profile }); await b.goto();
  assert.equal(await survey(b.tab), text);
  assert.equal(await id(b.tab), now);
  // and a second tab that answers is noticed by the first
  const other = await b.context.newPage(); await b.goto(other);
  await skip(new Person(other, "touch"));
  await other.evaluate(() => answer("height: 34 in"));
  await b.tab.evaluate(() => answer("note in the first tab"));
  await b.tab.waitForSelector("#notice strong");
  assert.match(await b.tab.textContent("#notice"), /another tab/);
  assert.match(await b.tab.textContent("#kept"), /Not kept/);
  await b.tab.locator("#notice").getByRole("button", { name: "Go on with the other tab's" }).tap();
  assert.equal(await survey(b.tab), await survey(other));
  await b.close();
});

test("where nothing can be kept it says so, and the survey can be saved and opened again", async () => {
  const b = await open({ prefs: { profile: { default_content_setting_values: { cookies: 2 } } } }); await b.goto();
  assert.match(await b.tab.textContent("#kept"), /Not kept: this browser does not let it\. Save the survey/);
  const person = new Person(b.tab, "touch");
  await person.press("Advice alone, no building rules");
  await b.tab.waitForFunction(() => document.querySelector("#screen h1")?.textContent === "Before you begin");
  assert.match(await b.tab.textContent("#screen"), /NO BUILDING RULES ARE CHECKED/);
  await shot(b.tab, "not-kept");
  await person.press("Next");
  if (await id(b.tab) === "children") await person.write("14 months");
  await person.write("the \"old\" porch");
  await landing.look(person);
  const text = await survey(b.tab);
  await b.tab.locator("summary", { hasText: /^More$/ }).click();
  const [download] = await Promise.all([b.tab.waitForEvent("download"), person.press("Save the survey")]);
  const at = join(mkdtempSync(join(tmpdir(), "saved-")), download.suggestedFilename());
  await download.saveAs(at);
  assert.equal(readFileSync(at, "utf8"), text);
  await b.tab.evaluate(() => first());
  await b.tab.setInputFiles("input[type=file]", at);
  await b.tab.waitForFunction(() => document.querySelector("#screen h1")?.textContent === "Before you begin");
  assert.equal(await survey(b.tab), text);
  const bad = join(mkdtempSync(join(tmpdir(), "bad-")), "latin.csv");
  writeFileSync(bad, Buffer.from([0x67, 0xfc, 0x0a]));
  await b.tab.evaluate(() => first());
  await b.tab.setInputFiles("input[type=file]", bad);
  await b.tab.waitForSelector("#notice strong");
  assert.match(await b.tab.textContent("#notice"), /latin\.csv was not opened.*CSV UTF-8/s);
  assert.equal(await survey(b.tab), text);
  await b.close();
});

test("a full store is said and nothing is lost from the screen", async () => {
  const b = await open(); await b.goto();
  const person = new Person(b.tab, "touch");
  await rulesOf(person, "Ohio", /flat/);
  if (await id(b.tab) === "children") await person.write("14 months");
  await b.tab.evaluate(() => { for (const size of [1e6, 1e5, 1e4, 1e3, 100, 10, 1]) { try { for (let n = 0; n < 200; n++) localStorage.setItem(`fill-${size}-${n}`, "x".repeat(size)); } catch { /* full at this size */ } } });
  await person.write("landing");
  await landing.look(person);
  assert.match(await b.tab.textContent("#kept"), /Not kept: the store of this browser is full/);
  assert.match(await survey(b.tab), /landing,condition/);
  await b.close();
});

test("in the frame of a previewer it works, and says that nothing is kept", async () => {
  const folder = mkdtempSync(join(tmpdir(), "frame-"));
  copyFileSync(PAGE, join(folder, "page.html"));
  writeFileSync(join(folder, "frame.html"), '<!doctype html><iframe sandbox="allow-scripts" src="page.html" width="390" height="800"></iframe>');
  const b = await open({ page: join(folder, "frame.html"), ready: false }); await b.goto();
  const frame = await (await b.tab.waitForSelector("iframe")).contentFrame();
  await frame.waitForSelector("html[data-ready=yes]", { state: "attached", timeout: 60000 });
  assert.match(await frame.textContent("#kept"), /Not kept.*This is a preview: save the file and open it with a browser/);
  await frame.getByRole("button", { name: "Advice alone, no building rules" }).tap();
  await frame.waitForFunction(() => document.querySelector("#screen h1").textContent === "Before you begin");
  await b.close();
});

test("a trap loses no answer but the last, and says so", async () => {
  const b = await open(); await b.goto();
  const person = new Person(b.tab, "touch");
  await rulesOf(person, "Ohio", /flat/);
  if (await id(b.tab) === "children") await person.write("14 months");
  await person.write("landing");
  await landing.look(person);
  const [text, now] = [await survey(b.tab), await id(b.tab)];
  // a real one: more room is asked for than there can be
  await b.tab.evaluate(() => { const { wasm } = core; core.wasm = { ...wasm, memory: wasm.memory, input: n => wasm.input(n), output: () => wasm.output(), trouble: () => wasm.trouble(), call: () => wasm.input(-1) }; });
  await person.press("nothing");
  await b.tab.waitForSelector("#notice strong");
  assert.match(await b.tab.textContent("#notice"), /This answer was not taken.*All that you answered before is still here/s);
  assert.equal(await survey(b.tab), text);
  assert.equal(await id(b.tab), now);
  await shot(b.tab, "trap");
  await person.press("nothing");
  assert.match(await survey(b.tab), /landing,moves when pushed,no/);
  await b.close();
});

test("a photograph is made small, loses its place, and stands in the saved page but not in the survey", async () => {
  const b = await open(); await b.goto();
  const person = new Person(b.tab, "touch");
  await rulesOf(person, "Ohio", /flat/);
  if (await id(b.tab) === "children") await person.write("14 months");
  await person.write("landing");
  // a picture of 3000 x 2000 with a position in it
  const picture = await b.tab.evaluate(async () => {
    const canvas = Object.assign(document.createElement("canvas"), { width: 3000, height: 2000 }), pen = canvas.getContext("2d");
    pen.fillStyle = "#888"; pen.fillRect(0, 0, 3000, 2000); pen.fillStyle = "#000"; for (let x = 0; x < 3000; x += 150) pen.fillRect(x, 200, 30, 1600);
    const blob = await new Promise(done => canvas.toBlob(done, "image/jpeg", 0.9)), bytes = new Uint8Array(await blob.arrayBuffer());
    const exif = new TextEncoder().encode("Exif\0\0GPSLatitude 41.5 GPSLongitude 81.7"), mark = [0xff, 0xe1, 0, exif.length + 2];
    return [...bytes.slice(0, 2), ...mark, ...exif, ...bytes.slice(2)];
  });
  const at = join(mkdtempSync(join(tmpdir(), "photo-")), "IMG 1.jpg");
  writeFileSync(at, Buffer.from(picture));
  assert.ok(readFileSync(at).includes("GPSLatitude"));
  await b.tab.locator("summary", { hasText: /^More$/ }).click();
  await person.press("A photograph");
  await b.tab.setInputFiles("#screen input[type=file]", at);
  await b.tab.waitForSelector(".pics img");
  await shot(b.tab, "photo");
  assert.match(await survey(b.tab), /landing,photo,landing-1\.jpg/);
  const kept = await b.tab.evaluate(async () => { const blob = photos.all.get("landing-1.jpg"), bitmap = await createImageBitmap(blob); return { size: blob.size, width: bitmap.width, height: bitmap.height, text: await blob.text() }; });
  assert.deepEqual([kept.width, kept.height], [1280, 853]);
  assert.ok(!kept.text.includes("GPS"));
  await b.close(true);
  const again = await open({ profile: b.profile }); await again.goto();
  assert.equal(await again.tab.evaluate(() => photos.all.has("landing-1.jpg")), true, "kept over a restart");
  await again.tab.evaluate(() => answer("finish"));
  const last = new Person(again.tab, "touch");
  for (let n = 0; n < 5 && await id(again.tab) !== "finished"; n++) await skip(last);
  await again.tab.waitForSelector("#report");
  const [download] = await Promise.all([again.tab.waitForEvent("download"), last.press("Save the page")]);
  const page = join(mkdtempSync(join(tmpdir(), "page-")), "page.html");
  await download.saveAs(page);
  const text = readFileSync(page, "utf8");
  assert.match(text, /<img[^>]*src="data:image\/jpeg;base64,/);
  assert.ok(!(await survey(again.tab)).includes("base64"));
  const show = await again.context.newPage(); const bad = [];
  show.on("console", m => bad.push(m.text()));
  await show.goto(`file://${page}`);
  assert.equal(await show.evaluate(() => document.querySelector("img").naturalWidth), 1280, "the saved page shows it");
  assert.deepEqual(bad, []);
  for (const format of ["A4", "Letter"]) assert.ok((await show.pdf({ format })).length > 5000, format);
  // printing prints the report in the frame
  const printed = await again.tab.evaluate(() => new Promise(done => { const frame = document.getElementById("report"); frame.contentWindow.addEventListener("beforeprint", () => done(true)); printReport(); setTimeout(() => done(false), 3000); }));
  assert.ok(printed);
  await again.close();
});

test("without JavaScript, or with a script that does not run, the page says what it needs and what to do", async () => {
  const html = readFileSync(PAGE, "utf8"), folder = mkdtempSync(join(tmpdir(), "broken-"));
  const put = (name, text) => { assert.notEqual(text, html); writeFileSync(join(folder, name), text); return join(folder, name); };
  const broken = html.replace('"use strict";', '"use strict"; const =;');
  const pages = [[PAGE, false], [put("refused.html", broken), true], [put("unread.html", broken.replace(/<meta http-equiv[^>]*>/, "")), true]];
  for (const [page, javaScriptEnabled] of pages) {
    const b = await open({ page, javaScriptEnabled, ready: false }); await b.goto();
    await b.tab.getByText("works only with JavaScript").waitFor({ state: "visible" });
    // and nothing to tap that would do nothing
    assert.equal(await b.tab.locator("button:visible, input:visible, label:visible").count(), 0, page);
    await b.close();
  }
});
test("without WebAssembly it says so", async () => {
  const b = await open({ ready: false });
  await b.context.addInitScript(() => { delete globalThis.WebAssembly; });
  await b.goto();
  await b.tab.waitForSelector("html[data-ready=no]", { state: "attached" });
  assert.match(await b.tab.textContent("#screen"), /cannot run the page.*it has no WebAssembly.*sheet/s);
  await b.close();
});

test("200 railings: memory and times", async () => {
  const b = await open(); await b.goto();
  const rows = ["unit,guard,item,reading,note", ",,rules,us-dwelling-2018,", ",,children,14 months,"];
  for (let n = 1; n <= 200; n++) rows.push(...["place,landing", "condition,none seen", "moves when pushed,no", "infill loose,no", "drop,over 30 in", "infill,balusters", `opening,4 in ball stops everywhere`, `height,${35 + n % 3} in`].map(row => `${n % 40},landing ${n},${row},`));
  const at = join(mkdtempSync(join(tmpdir(), "many-")), "many.csv");
  writeFileSync(at, rows.join("\n") + "\n");
  await b.tab.setInputFiles("input[type=file]", at);
  await b.tab.waitForFunction(() => document.querySelector("#screen h1").textContent === "Before you begin");
  await b.tab.evaluate(() => { state.said = []; question(); });
  await b.tab.evaluate(() => answer("next"));
  const one = await b.tab.evaluate(() => { answer("landing 201"); return times.shown; });
  const many = await b.tab.evaluate(async () => { const t = performance.now(); await end(); return Math.round(performance.now() - t); });
  const memory = await b.tab.evaluate(() => core.wasm.memory.buffer.byteLength / 2 ** 20);
  console.log(`200 railings: an answer ${one} ms, the end ${many} ms, module's memory ${memory.toFixed(1)} MiB`);
  assert.ok(memory < 256);
  assert.match(await b.tab.textContent("#kept"), /^Kept/);
  await b.close();
});

test("axe-core finds nothing and nothing sticks out, at 320 and 390 px, light, dark, forced colours and with text twice as large", async () => {
  const looks = [[390, "light", "none", 1], [320, "dark", "none", 1], [320, "light", "active", 1], [390, "light", "none", 2]];
  for (const [width, colorScheme, forcedColors, zoom] of looks) {
    const b = await open({ viewport: { width, height: width === 320 ? 568 : 844 }, colorScheme, forcedColors }); await b.goto();
    const person = new Person(b.tab, "touch");
    const look = async name => {
      if (zoom > 1) await b.tab.evaluate(() => { document.documentElement.style.fontSize = "200%"; });
      await shot(b.tab, `${name}-${width}-${colorScheme}${forcedColors === "active" ? "-forced" : ""}${zoom > 1 ? "-200" : ""}`);
      const wide = await b.tab.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      assert.ok(wide <= 0, `${name} sticks out by ${wide} px at ${width} × ${zoom}`);
      const small = await b.tab.evaluate(() => [...document.querySelectorAll("#screen button, #screen summary, #screen .file, #screen input[type=text]")].filter(n => n.offsetParent && n.getBoundingClientRect().height < 47.5).map(n => n.textContent));
      assert.deepEqual(small, [], name);
      await b.tab.evaluate(axe);
      const found = await b.tab.evaluate(() => axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] }));
      assert.deepEqual(found.violations.map(v => `${name}: ${v.id}: ${v.nodes.map(n => n.html).join(" ")}`), []);
      assert.ok(found.passes.length > 10);
    };
    await look("where");
    await rulesOf(person, "Ohio", /flat/);
    if (await id(b.tab) === "children") await person.write("14 months");
    await look("name");
    await walkOne(person, "landing", { ...Object.fromEntries(Object.entries(landing).map(([key, act]) => [key, key === "danger" ? act : async (p, now) => { await look(now.replace(/ /g, "-")); await act(p, now); }])) });
    await walkOne(person, "deck", { ...deck, danger: async p => { await look("danger"); await deck.danger(p); }, closed: async p => { await look("closed"); await p.press("yes"); } });
    await person.press("No more railings");
    for (let n = 0; n < 5 && await id(b.tab) !== "finished"; n++) await skip(person);
    await b.tab.waitForSelector("#report");
    await look("end");
    await b.close();
  }
});
