// The page in Firefox: a railing walked through, a danger, the report; axe on every screen,
// nothing sticks out, no message, no request but the file. And what an HTML checker says of it.
// node firefox.mjs [PAGE]; packages are those of tests/pages.
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { createRequire } from "node:module";
import { nonconforming } from "../pages/conforms.mjs";
const require = createRequire(new URL("../pages/package.json", import.meta.url));
const puppeteer = require("puppeteer-core");
const axe = require("axe-core").source;

const page = resolve(process.argv[2] ?? process.env.PAGE ?? "target/page/guardrule.html"), url = pathToFileURL(page).href;
const LINES = ["14 months", "landing", "n", "n", "y", "b", "4", "35 1/2 in", "n", "h", "", "", "", "", "deck", "3", "2", "y, a lock", "", "finish", ""];
let passed = 0;
const failed = [];
const check = (what, faults) => { if (faults.length === 0) passed += 1; else failed.push(`${what}:`, ...faults.slice(0, 8).map(fault => `    ${fault}`)); };

// the letters of the module are no markup, and only take the checker long
const html = readFileSync(page, "utf8");
check("conforms", await nonconforming(html.replace(/(data-bytes="\d+">)[^<]*</, "$1<")));

const browser = await puppeteer.launch({ browser: "firefox", executablePath: process.env.FIREFOX ?? "/usr/bin/firefox-esr", headless: true });
try {
  for (const width of [320, 390]) {
    const tab = await browser.newPage(), faults = [];
    tab.on("console", message => { if (message.type() !== "log") faults.push(`console: ${message.text()}`); });
    tab.on("pageerror", error => faults.push(`error: ${error.message}`));
    tab.on("request", request => { if (request.url() !== url && !/^(data|blob|about):/.test(request.url())) faults.push(`request: ${request.url()}`); });
    await tab.setViewport({ width, height: 700 });
    await tab.goto(url);
    await tab.waitForSelector("html[data-ready]", { timeout: 90000 });
    check(`${width} px: it runs`, await tab.$eval("html", html => html.dataset.ready) === "yes" ? [] : ["it says that it cannot"]);
    const look = async what => {
      const wide = await tab.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      check(`${width} px, ${what}: nothing sticks out`, wide > 0 ? [`${wide} px`] : []);
      await tab.evaluate(axe);
      const found = await tab.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
      check(`${width} px, ${what}: axe`, found.violations.flatMap(one => one.nodes.map(node => `${one.id}: ${node.html}`)));
    };
    await look("first question");
    await tab.evaluate(() => { begin("", ["us-dwelling-2018"]); question(); });
    for (const line of LINES) {
      await tab.evaluate(line => answer(line), line);
      await look(await tab.$eval("#screen h1, #screen h2", heading => heading.textContent));
    }
    await tab.waitForSelector("#report", { timeout: 60000 });
    const text = await tab.evaluate(() => state.survey);
    check(`${width} px: the survey`, ["landing,height,35 1/2 in", "deck,moves when pushed,a lot"].filter(row => !text.includes(row)));
    await look("report");
    check(`${width} px: silence`, faults);
    await tab.close();
  }
} finally {
  await browser.close();
}
console.log(`phone in firefox: ${passed} passed, ${failed.filter(line => !line.startsWith(" ")).length} failed`);
if (failed.length > 0) console.error(failed.join("\n"));
process.exitCode = failed.length > 0 || passed === 0 ? 1 : 0;
