// node heard.mjs: the accessibility tree of each screen of one railing, as a screen reader goes through it.
import { closeAll, heading, id, open, Person, rulesOf, skip, walkOne } from "./browser.mjs";

const NAMED = new Set(["heading", "button", "textbox", "checkbox", "image", "StaticText", "DisclosureTriangle", "status", "alert"]);
async function heard(tab) {
  const cdp = await tab.context().newCDPSession(tab);
  const { nodes } = await cdp.send("Accessibility.getFullAXTree");
  const by = new Map(nodes.map(node => [node.nodeId, node])), lines = [];
  const walk = (node, named) => {
    const role = node.role?.value, name = node.name?.value?.trim();
    const says = !node.ignored && NAMED.has(role) && name && !(role === "StaticText" && named);
    const kind = ["pressed", "checked"].map(name => node.properties?.find(one => one.name === name)).filter(Boolean).map(one => `, ${one.value.value === "true" ? "" : "not "}${one.name}`).join("");
    if (says) lines.push(role === "StaticText" ? name : `[${role}${kind}] ${name}${node.description?.value ? ` (${node.description.value})` : ""}`);
    for (const child of node.childIds ?? []) if (by.has(child)) walk(by.get(child), named || (says && role !== "StaticText"));
  };
  walk(nodes[0], false);
  return lines.join("\n");
}
const b = await open(); await b.goto();
const person = new Person(b.tab, "keyboard"), put = async what => console.log(`\n--- ${what} (the focus is on: ${await b.tab.evaluate(() => document.activeElement.textContent.slice(0, 60))})\n${await heard(b.tab)}`);
await put("where");
await rulesOf(person, "Ohio", /flat/);
if (await id(b.tab) === "children") { await put("children"); await person.write("14 months"); }
await put("name");
const landing = { look: p => p.press("nothing of these"), touch: p => p.press("nothing"), "drop beyond": p => p.press("yes"), infill: p => p.press("balusters (upright bars)"), gaps: p => p.press("4 in"), height: p => p.write("35 1/2"), climb: p => p.press("nothing"), "post fastening": p => p.press("hidden"), photo: skip, otherwise: skip };
await walkOne(person, "landing", Object.fromEntries(Object.entries(landing).map(([key, act]) => [key, async (p, now) => { await put(now); await act(p); }])));
await person.press("No more railings");
for (let n = 0; n < 5 && await id(b.tab) !== "finished"; n++) await skip(person);
await b.tab.waitForSelector("#report");
await put(`end: ${await heading(b.tab)}`);
await closeAll();
