// Opens the page that runs the checker, as a builder would. Prints one line a test, "passed: …" or
// "failed: …". Arguments: the page, the demo's folder, what the program says of the demo, what it draws of
// it, a project with hostile names, a folder for pictures.
import { createServer } from 'node:http';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test, until, visit } from './outcome.mjs';
import { launched, seriousOn } from './trial.mjs';

const [file, demo, saidFile, drawnFile, hostile, folder] = process.argv.slice(2);
const said = readFileSync(saidFile, 'utf8');
const browser = await launched();

const server = createServer((request, answer) => {
  if (request.url !== '/') return answer.writeHead(404).end();
  answer.writeHead(200, { 'content-type': 'text/html' }).end(readFileSync(file));
});
await new Promise((go) => server.listen(0, '127.0.0.1', go));
const homes = { 'a folder': pathToFileURL(file).href, 'a server': `http://127.0.0.1:${server.address().port}/` };

async function open(address, context) {
  const page = await context.newPage();
  await visit(page, address);
  await checked(page);
  return page;
}

const fresh = (options = {}) => browser.newContext({ viewport: { width: 1400, height: 900 }, ...options });

/** Waits until the checker rests, and the report stands beside it where there is one. */
async function checked(page) {
  await until(() => page.evaluate(() => document.getElementById('working').hidden &&
    document.getElementById('tally').textContent !== 'not checked yet' &&
    !document.querySelector('#report iframe:not(.shown)')), 'the check does not end');
}

const files = (from) => readdirSync(from).map((name) => join(from, name));
const give = async (page, paths) => {
  await page.setInputFiles('#open-files', paths);
  await page.waitForTimeout(300);
  await checked(page);
};

/** What a command line comes to. */
async function result(page, line) {
  await page.getByRole('tab', { name: 'Results' }).click();
  await page.fill('#command-line', line);
  await page.evaluate(() => (document.getElementById('command-output').textContent = ''));
  // By the key: a click may go to the report that stood there until now, where the browser is slow to draw.
  await page.press('#command-line', 'Enter');
  await until(async () => !['', 'working'].includes(await page.textContent('#command-output')), `no answer to ${line}`);
  return page.textContent('#command-output');
}

/** Types over the whole of `was` in the open file. */
async function retype(page, was, now) {
  await page.getByRole('textbox', { name: 'Text of the chosen file' }).focus();
  await page.keyboard.press('Control+f');
  // The search takes in what is typed at the keys alone.
  await page.locator('.cm-search input[name=search]').pressSequentially(was);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await page.keyboard.type(now);
}

for (const [home, address] of Object.entries(homes)) {
  const page = await open(address, await fresh());

  await test(`from ${home}, the demo's files give what the program says`, async () => {
    await give(page, files(demo));
    await page.selectOption('#project-file', 'as-drawn.yaml');
    expect(await result(page, 'check as-drawn.yaml') === said, 'other words');
    expect(await result(page, 'draw as-drawn.yaml --view side') === readFileSync(drawnFile, 'utf8'), 'another drawing');
    await page.getByRole('tab', { name: 'Pictures' }).click();
  });

  await test(`from ${home}, no request leaves the page and nothing is said on the console`, async () => {
    const others = page.asked.filter((url) => url !== address && !/^(blob|data|about):/.test(url));
    expect(others.length === 0, others.join(', '));
    expect(page.said.length === 0, page.said.join('; '));
  });
  await page.context().close();
}

const context = await fresh({ acceptDownloads: true });
const page = await open(homes['a folder'], context);

await test('files that are dropped are taken', async () => {
  const handed = files(demo).map((path) => [path.split('/').pop(), readFileSync(path, 'utf8')]);
  await page.evaluate((handed) => {
    const transfer = new DataTransfer();
    for (const [name, text] of handed.filter(([name]) => name !== 'as-drawn.yaml')) transfer.items.add(new File([text], name));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
  }, handed);
  await until(() => page.evaluate(() => document.getElementById('project-file').value === 'mended.yaml'), 'not taken');
  await checked(page);
  expect(/^\d+ passed$|passed/.test(await page.textContent('#tally')), await page.textContent('#tally'));
  expect(!/failed/.test(await page.textContent('#tally')), await page.textContent('#tally'));
});

await test('a tighter bend that is typed is found at its line and in the picture', async () => {
  await page.click('#files button[data-path="static.yaml"]');
  const text = readFileSync(join(demo, 'static.yaml'), 'utf8');
  const bend = 'bend: 1 1/4';
  const line = text.slice(0, text.indexOf(bend)).split('\n').length;
  await retype(page, bend, 'bend: 0.2');
  const finding = page.locator('#findings li.fail', { hasText: 'bend-radius' }).first();
  await finding.waitFor();
  await checked(page);
  expect((await finding.locator('.where').textContent()) === `static.yaml:${line}`, await finding.textContent());
  expect(await page.locator('.cm-lint-marker-error').count() > 0, 'no mark beside the line');
  await finding.locator('button').click();
  const report = page.frameLocator('#report iframe.shown');
  await until(async () => /bend-radius/.test(await report.locator('.chosen-line').textContent()), 'not shown in the picture');
});

await test('a finding picked in the picture is picked in the list and in the text', async () => {
  const report = page.frameLocator('#report iframe.shown');
  await report.getByRole('button', { name: 'Next finding' }).click();
  const said = await report.locator('.chosen-line b').textContent();
  await until(() => page.evaluate(() => document.querySelectorAll('#findings [aria-current=true]').length === 1), 'none');
  expect(said.length > 0, 'no words');
});

await test('what was typed is there when the page is closed and opened again', async () => {
  await page.waitForTimeout(1000);
  await page.close();
  const again = await open(homes['a folder'], context);
  await again.click('#files button[data-path="static.yaml"]');
  expect(/bend: 0\.2/.test(await again.textContent('.cm-content')), 'it is gone');
  expect(await again.locator('#findings li.fail').count() > 0, 'not checked again');
  const [download] = await Promise.all([again.waitForEvent('download'), again.click('#zip')]);
  await download.saveAs(join(folder, 'saved.zip'));
  await again.click('#clear');
  await again.waitForTimeout(500);
  await again.close();
  const empty = await open(homes['a folder'], context);
  await until(async () => (await empty.textContent('#name')) === 'demo', 'not cleared');
  await empty.close();
});

await test('a project that was saved opens again as it was', async () => {
  const seen = await open(homes['a folder'], await fresh({ acceptDownloads: true }));
  const [download] = await Promise.all([seen.waitForEvent('download'), seen.click('#zip')]);
  const zip = join(folder, 'demo.zip');
  await download.saveAs(zip);
  const { unzipSync } = await import('fflate');
  const unpacked = join(folder, 'unpacked');
  mkdirSync(unpacked, { recursive: true });
  for (const [path, bytes] of Object.entries(unzipSync(readFileSync(zip))))
    writeFileSync(join(unpacked, path.split('/').pop()), bytes);
  await give(seen, files(unpacked));
  expect(await result(seen, 'check as-drawn.yaml') === said, 'other words');
  await seen.context().close();
});

await test('a new project checks clean, and errors of a file are told at their place', async () => {
  const seen = await open(homes['a folder'], await fresh());
  await seen.click('#starter');
  await until(async () => (await seen.textContent('#name')) === 'my-aeroplane', 'not begun');
  await checked(seen);
  expect(/passed/.test(await seen.textContent('#tally')) && !/failed|not known/.test(await seen.textContent('#tally')), await seen.textContent('#tally'));
  await retype(seen, 'build_tolerance', 'build_tolerence');
  await seen.locator('#findings li.error').first().waitFor();
  expect(/^project\.yaml:\d+$/.test(await seen.textContent('#findings li.error .where')), 'no place');
  expect((await seen.textContent('#said')).includes('did you mean'), 'no help');
  await seen.context().close();
});

await test('names that would be markup or script show as text', async () => {
  const seen = await open(homes['a folder'], await fresh());
  await give(seen, [hostile]);
  expect(await seen.evaluate(() => window.broken) === undefined, 'a name was run');
  expect(await seen.locator('#findings script, #findings img, #files img').count() === 0, 'a name became markup');
  await seen.locator('#report iframe.shown').waitFor();
  const inside = seen.frames().slice(1).map((each) => each.evaluate(() => window.broken));
  expect((await Promise.all(inside)).every((each) => each === undefined), 'a name was run in the report');
  expect(await seen.evaluate(() => document.documentElement.scrollWidth) <= 1400, 'a name widens the page');
  expect(seen.said.length === 0, seen.said.join('; '));
  await seen.context().close();
});

await test('a large mesh leaves the page at hand, and its check can be cancelled', async () => {
  const seen = await open(homes['a folder'], await fresh());
  await seen.click('#starter');
  await until(async () => (await seen.textContent('#name')) === 'my-aeroplane', 'not begun');
  await checked(seen);
  const triangles = await seen.evaluate(async () => {
    // A million triangles are 50 MB.
    const rows = 708;
    const triangles = 2 * rows * rows;
    const bytes = new DataView(new ArrayBuffer(84 + 50 * triangles));
    bytes.setUint32(80, triangles, true);
    const corner = (i, j) => [100 + (i * 100) / rows, -10 + (j * 20) / rows, 16 + Math.sin(i * 0.7) * Math.cos(j * 0.9)];
    let at = 84;
    for (let i = 0; i < rows; i += 1)
      for (let j = 0; j < rows; j += 1)
        for (const face of [[[i, j], [i + 1, j], [i, j + 1]], [[i + 1, j], [i + 1, j + 1], [i, j + 1]]]) {
          face.flatMap(([a, b]) => corner(a, b)).forEach((value, k) => bytes.setFloat32(at + 12 + 4 * k, value, true));
          at += 50;
        }
    const transfer = new DataTransfer();
    transfer.items.add(new File([bytes.buffer], 'skin.stl'));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
    await new Promise((go) => setTimeout(go, 1500));
    return triangles;
  });
  expect(triangles > 1000000, 'no mesh');
  await seen.click('#files button[data-path="structure.yaml"]');
  // One is checked within a second or two: eight take long enough to be met at work.
  const meshes = [1, 2, 3, 4, 5, 6, 7, 8].map((number) => `{name: skin-${number}, file: skin.stl}`);
  await retype(seen, 'structure:', `structure:\n  meshes: [${meshes.join(', ')}]`);
  await until(async () => /working, \d+ s/.test(await seen.textContent('#working')), 'nothing is said of the work');
  await seen.click('#files button[data-path="project.yaml"]');
  expect((await seen.getByRole('textbox', { name: 'Text of the chosen file' }).textContent()).includes('linewright: 1'), 'no other file opens');
  expect(await seen.isVisible('#working'), 'the check was over before the page was at hand');
  await seen.click('#stop');
  await until(async () => /Stopped/.test(await seen.textContent('#tally')), 'it goes on');
  await checked(seen);
  const answer = await result(seen, 'rules');
  expect(answer.includes('bend-radius'), 'no command runs after that');
  await seen.context().close();
});

await test('an automatic check of access finds nothing serious', async () => {
  for (const colorScheme of ['light', 'dark']) {
    const seen = await open(homes['a folder'], await fresh({ colorScheme }));
    const serious = await seriousOn(seen, { iframes: false });
    expect(!serious, `${colorScheme}: ${serious}`);
    await seen.context().close();
  }
});

await test('nothing is wider than a narrow screen', async () => {
  for (const [colorScheme, width] of [['light', 1400], ['dark', 1400], ['light', 400], ['dark', 400]]) {
    const seen = await open(homes['a folder'], await fresh({ colorScheme, viewport: { width, height: 900 } }));
    const wide = await seen.evaluate(() => document.documentElement.scrollWidth);
    expect(wide <= width, `${wide} px on ${width}`);
    await seen.screenshot({ path: join(folder, `page-${colorScheme}-${width}.png`), fullPage: width === 400 });
    await seen.context().close();
  }
});

await test('a key goes from tab to tab, and to every button', async () => {
  const seen = await open(homes['a folder'], await fresh());
  await seen.focus('#tab-report');
  await seen.keyboard.press('ArrowRight');
  expect(await seen.isVisible('#panel-command') && !(await seen.isVisible('#panel-report')), 'the other panel stays');
  await seen.context().close();
});

server.close();
await browser.close();
