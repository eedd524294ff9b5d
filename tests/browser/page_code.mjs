// What of the page's own code needs no browser: which files make a project, what was found, words of a
// command line. Prints one line a test, "passed: …" or "failed: …".
import assert from 'node:assert/strict';
import { File } from 'node:buffer'; // a global name only since node 20
import { wordsOf } from '../../src/page/source/commands.js';
import { errorsOf, findingsOf, tallyWords } from '../../src/page/source/findings.js';
import { bytesOf, projectFiles, taken } from '../../src/page/source/project.js';
import { test } from './outcome.mjs';

const given = (...paths) => paths.map((path) => ({ path, file: new File(['x'], path.split('/').pop()) }));
const files = (texts) => new Map(Object.entries(texts).map(([path, text]) => [path, bytesOf(text)]));

await test('files are taken under their paths, without the folder that all are in', async () => {
  const { files, note } = await taken(given('wing/project.yaml', 'wing/parts/tip.yaml', 'wing/skin.stl'));
  assert.deepEqual([...files.keys()], ['project.yaml', 'parts/tip.yaml', 'skin.stl']);
  assert.equal(note, '');
});

await test('loose files keep their names', async () => {
  const { files } = await taken(given('project.yaml', 'parts/tip.yaml'));
  assert.deepEqual([...files.keys()], ['project.yaml', 'parts/tip.yaml']);
});

await test('what leads out of the folder, hides, or is of no kind is left out, and counted', async () => {
  const { files, note } = await taken(given('a/project.yaml', 'a/../../out.yaml', 'a/.git/config.yaml', 'a/photo.jpg', 'a/\0.yaml'));
  assert.deepEqual([...files.keys()], ['project.yaml']);
  assert.match(note, /^4 files were left out/);
});

await test('a file under the name of a built-in property is a file like others', async () => {
  const { files } = await taken(given('__proto__.yaml', 'constructor/toString.yaml'));
  assert.deepEqual([...files.keys()], ['__proto__.yaml', 'constructor/toString.yaml']);
});

await test('the project file is one that no other includes', () => {
  const project = files({
    'as-drawn.yaml': 'linewright: 1\ninclude: [nodes.yaml, static.yaml]\n',
    'mended.yaml': 'linewright: 1\ninclude:\n  - nodes.yaml\n  - static.yaml\n',
    'nodes.yaml': 'linewright: 1\nnodes: []\n',
    'static.yaml': 'linewright: 1\n',
    'readings.csv': 'time,ft\n',
  });
  assert.deepEqual(projectFiles(project), ['as-drawn.yaml', 'mended.yaml']);
});

await test('project.yaml goes before others', () => {
  const project = files({ 'a.yaml': 'linewright: 1\n', 'b/project.yaml': 'linewright: 1\n' });
  assert.deepEqual(projectFiles(project), ['b/project.yaml', 'a.yaml']);
});

await test('files that include each other are all offered', () => {
  const project = files({ 'a.yaml': 'linewright: 1\ninclude: [b.yaml]\n', 'b.yaml': 'linewright: 1\ninclude: [a.yaml]\n' });
  assert.deepEqual(projectFiles(project), ['a.yaml', 'b.yaml']);
});

await test('findings come worst first, under the names that the report gives them', () => {
  const found = findingsOf({
    checks: [
      { verdict: 'pass', margin: 1, limit: 1 }, { verdict: 'warn', margin: -0.1, limit: 1 },
      { verdict: 'fail', margin: -0.2, limit: 2 }, { verdict: 'unknown', margin: null, limit: null },
      { verdict: 'fail', margin: -0.2, limit: 1 }, { verdict: 'waived', margin: -9, limit: 1 },
    ],
  });
  assert.deepEqual(found.map(({ id }) => id), ['judgement-5', 'judgement-3', 'judgement-4', 'judgement-2', 'judgement-6']);
});

await test('errors keep their place and their help', () => {
  const errors = errorsOf("a b.yaml:3:7: error: unknown key 'nod': here\n  3 | nod: 1\nhelp: did you mean 'node'?\n" +
    'linewright: error: 1 error in the project\n');
  assert.deepEqual(errors.map(({ message, mend, location }) => [message, mend, location]), [
    ["unknown key 'nod': here", "did you mean 'node'?", { file: 'a b.yaml', line: 3, column: 7 }],
    ['1 error in the project', '', { file: '', line: 0, column: 0 }],
  ]);
});

await test('a tally names what there is, and never nothing', () => {
  assert.equal(tallyWords({ fail: 2, unknown: 1, warn: 0, waived: 0, pass: 30 }), '2 failed, 1 not known, 30 passed');
  assert.equal(tallyWords({ fail: 0, unknown: 0, warn: 0, waived: 0, pass: 0 }), 'nothing was judged');
});

await test('words are parted by blanks and held together by quotes', () => {
  assert.deepEqual(wordsOf('linewright check  "a b.yaml" --set x=\'1 1/4\''), ['check', 'a b.yaml', '--set', 'x=1 1/4']);
  assert.deepEqual(wordsOf(' check --rule ""'), ['check', '--rule', '']);
  assert.deepEqual(wordsOf(''), []);
});
