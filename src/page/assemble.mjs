// Makes one page of the checker, its script, its look and the demo: `assemble.mjs BUILD OUTPUT`.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

const here = dirname(fileURLToPath(import.meta.url));
const [build, output] = process.argv.slice(2);
const text = (path) => readFileSync(path, 'utf8');
const own = (name) => text(join(here, name));
const hash = (content) => `'sha256-${createHash('sha256').update(content).digest('base64')}'`;
/** Data between tags: no end of an element stands in it. */
const held = (content) => content.replaceAll('</', '<\\/').replaceAll('<!--', '<\\!--');

const script = own('page.js');
const style = own('page.css');
const report = join(here, '../render/report');
const worker = `${text(join(build, 'linewright_page.js'))}\n${own('worker.js')}`;
const wasm = gzipSync(readFileSync(join(build, 'linewright_page.wasm')), { level: 9 }).toString('base64');
const routes = join(here, '../../routes');
const demo = Object.fromEntries(readdirSync(routes).sort().map((name) => [name, text(join(routes, name))]));

// The report's own script and style run in its frame, which is held to this policy, too.
const policy = [
  "default-src 'none'",
  `script-src ${hash(script)} ${hash(text(join(report, 'viewer.js')))} 'wasm-unsafe-eval'`,
  `style-src ${hash(style)} ${hash(text(join(report, 'page.css')))}`,
  'worker-src blob:', 'img-src blob: data:', "base-uri 'none'", "form-action 'none'",
].join('; ');

if (/<\/script|<!--/i.test(script)) throw new Error('page.js cannot stand in a page');
writeFileSync(output, `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<title>Linewright</title>
<link rel="icon" href="data:,">
<style>${style}</style>
</head>
<body>
${own('page.html')}<script type="application/json" id="demo-files">${JSON.stringify(demo).replaceAll('<', '\\u003c')}</script>
<script type="text/plain" id="worker">${held(worker)}</script>
<script type="text/plain" id="checker">${wasm}</script>
<script>${script}</script>
</body>
</html>
`);
