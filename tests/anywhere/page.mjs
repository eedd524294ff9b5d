// Runs command lines in the checker as the page has it, on the files of a folder: `page.mjs BUILD FOLDER
// LINES RESULTS`. Writes what each comes to under its number, as the shell does of the program.
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';

const [build, folder, lines, results] = process.argv.slice(2);
const load = createRequire(import.meta.url)(resolve(build, 'linewright_page.js'));
const checker = await load({ wasmBinary: readFileSync(join(build, 'linewright_page.wasm')) });

function copy(from, to) {
  checker.FS.mkdir(to);
  for (const name of readdirSync(from))
    if (statSync(join(from, name)).isDirectory()) copy(join(from, name), `${to}/${name}`);
    else checker.FS.writeFile(`${to}/${name}`, readFileSync(join(from, name)));
}

copy(folder, '/project');
checker.FS.chdir('/project');
for (const [i, line] of readFileSync(lines, 'utf8').trimEnd().split('\n').entries()) {
  const bytes = Buffer.from(line.split(' ').map((word) => `${word}\0`).join(''));
  const at = checker._malloc(bytes.length);
  checker.HEAPU8.set(bytes, at);
  const code = checker._linewright_run(at, bytes.length);
  checker._free(at);
  const from = checker._linewright_result();
  writeFileSync(join(results, String(i + 1)), checker.HEAPU8.slice(from, from + checker._linewright_result_size()));
  writeFileSync(join(results, `${i + 1}.errors`), `${checker.UTF8ToString(checker._linewright_errors())}exit code ${code}\n`);
}
