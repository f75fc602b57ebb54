// A page of the list, printed by the program into a folder.
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const program = process.env.GUARDRULE ?? join(root, 'target/debug/guardrule');

/// Prints pages into `folder`: the file and its text.
export function maker(folder) {
  return (page) => {
    const own = join(folder, `${page.name}-files`);
    for (const [name, content] of Object.entries(page.files ?? {})) {
      mkdirSync(own, { recursive: true });
      writeFileSync(join(own, name), content);
    }
    const args = page.args.map((arg) => arg.replace(/^@/, `${own}/`));
    const ran = spawnSync(program, args, { cwd: root, encoding: 'utf8', maxBuffer: 1 << 29 });
    if (!ran.stdout?.includes('</html>')) throw new Error(`${page.name}: ${ran.error ?? ran.stderr}`);
    const file = join(folder, `${page.name}.html`);
    writeFileSync(file, ran.stdout);
    return { file, html: ran.stdout };
  };
}
