// Opens the page that runs the checker in Firefox, as a builder would. Prints one line a test, "passed: …" or
// "failed: …". Arguments: the page, the demo's folder, what the program says of the demo, a project with
// hostile names, a folder for pictures.
import { createServer } from 'node:http';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import puppeteer from 'puppeteer-core';
import { expect, patience, test, until, visit } from '../outcome.mjs';

const [file, demo, saidFile, hostile, folder] = process.argv.slice(2);
const said = readFileSync(saidFile, 'utf8');

const browser = await puppeteer.launch({
  browser: 'firefox',
  executablePath: process.env.FIREFOX || '/usr/bin/firefox-esr',
  headless: false, // it draws the pictures only where there is a screen
  protocolTimeout: patience,
  defaultViewport: { width: 1400, height: 900 },
  extraPrefsFirefox: { 'webgl.force-enabled': true },
});

const server = createServer((request, answer) => {
  if (request.url !== '/') return answer.writeHead(404).end();
  answer.writeHead(200, { 'content-type': 'text/html' }).end(readFileSync(file));
});
await new Promise((go) => server.listen(0, '127.0.0.1', go));
const homes = { 'a folder': pathToFileURL(file).href, 'a server': `http://127.0.0.1:${server.address().port}/` };

const text = (page, selector) => page.$eval(selector, (each) => each.textContent);
const count = (page, selector) => page.$$eval(selector, (all) => all.length);

/** Waits until the checker rests, and the report stands beside it where there is one. */
const checked = (page) => until(() => page.evaluate(() => document.getElementById('working').hidden &&
  document.getElementById('tally').textContent !== 'not checked yet' &&
  !document.querySelector('#report iframe:not(.shown)')), 'the check does not end');

async function open(address, context) {
  const page = await context.newPage();
  await visit(page, address);
  await checked(page);
  return page;
}

async function give(page, paths) {
  await (await page.$('#open-files')).uploadFile(...paths);
  await new Promise((go) => setTimeout(go, 300));
  await checked(page);
}

/** What a command line comes to. */
async function result(page, line) {
  await page.click('#tab-command');
  await page.$eval('#command-line', (field, line) => { field.value = line; }, line);
  await page.$eval('#command-output', (each) => { each.textContent = ''; });
  await page.focus('#command-line');
  await page.keyboard.press('Enter');
  await until(async () => !['', 'working'].includes(await text(page, '#command-output')), `no answer to ${line}`);
  return text(page, '#command-output');
}

/** Types over the whole of `was` in the open file. */
async function retype(page, was, now) {
  await page.waitForSelector('>>> .cm-content');
  await page.focus('>>> .cm-content');
  await page.keyboard.down('Control');
  await page.keyboard.press('f');
  await page.keyboard.up('Control');
  await page.waitForSelector('>>> .cm-search input[name=search]');
  await page.type('>>> .cm-search input[name=search]', was);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await page.keyboard.type(now);
}

const files = readdirSync(demo).map((name) => join(demo, name));

for (const [home, address] of Object.entries(homes)) {
  const context = await browser.createBrowserContext();
  const page = await open(address, context);
  await test(`from ${home}, the demo's files give what the program says`, async () => {
    await give(page, files);
    await page.select('#project-file', 'as-drawn.yaml');
    expect(await result(page, 'check as-drawn.yaml') === said, 'other words');
    await page.click('#tab-report');
  });
  await test(`from ${home}, no request leaves the page and nothing is said on the console`, async () => {
    const others = page.asked.filter((url) => url !== address && !/^(blob|data|about):/.test(url));
    expect(others.length === 0, others.join(', '));
    expect(page.said.length === 0, page.said.join('; '));
  });
  await context.close();
}

const context = await browser.createBrowserContext();
const page = await open(homes['a folder'], context);

await test('files that are dropped are taken', async () => {
  const handed = files.map((path) => [path.split('/').pop(), readFileSync(path, 'utf8')]);
  await page.evaluate((handed) => {
    const transfer = new DataTransfer();
    for (const [name, words] of handed.filter(([name]) => name !== 'as-drawn.yaml')) transfer.items.add(new File([words], name));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
  }, handed);
  await until(() => page.$eval('#project-file', (each) => each.value === 'mended.yaml'), 'not taken');
  await checked(page);
  expect(!/failed/.test(await text(page, '#tally')), await text(page, '#tally'));
});

await test('a tighter bend that is typed is found at its line and in the picture', async () => {
  await page.click('#files button[data-path="static.yaml"]');
  const words = readFileSync(join(demo, 'static.yaml'), 'utf8');
  const bend = 'bend: 1 1/4';
  const line = words.slice(0, words.indexOf(bend)).split('\n').length;
  await retype(page, bend, 'bend: 0.2');
  const finding = () => page.evaluate(() => [...document.querySelectorAll('#findings li.fail')]
    .find((each) => each.textContent.includes('bend-radius'))?.querySelector('.where').textContent);
  await until(async () => (await finding()) === `static.yaml:${line}`, 'no finding at its line');
  await checked(page);
  await page.evaluate(() => [...document.querySelectorAll('#findings li.fail')]
    .find((each) => each.textContent.includes('bend-radius')).querySelector('button').click());
  const chosen = async () => (await page.$('#report iframe.shown')).contentFrame()
    .then((frame) => frame.$eval('.chosen-line', (each) => each.textContent));
  await until(async () => /bend-radius/.test(await chosen()), 'not shown in the picture');
  await page.screenshot({ path: join(folder, 'firefox.png') });
});

await test('what was typed is there when the page is closed and opened again', async () => {
  await new Promise((go) => setTimeout(go, 1000));
  await page.close();
  const again = await open(homes['a folder'], context);
  await again.click('#files button[data-path="static.yaml"]');
  await again.waitForSelector('>>> .cm-content');
  expect(/bend: 0\.2/.test(await text(again, '>>> .cm-content')), 'it is gone');
  expect(await count(again, '#findings li.fail') > 0, 'not checked again');
  await again.close();
});

await test('names that would be markup or script show as text', async () => {
  const seen = await open(homes['a folder'], await browser.createBrowserContext());
  await give(seen, [hostile]);
  expect(await seen.evaluate(() => window.broken) === undefined, 'a name was run');
  expect(await count(seen, '#findings script, #findings img, #files img') === 0, 'a name became markup');
  expect(seen.said.length === 0, seen.said.join('; '));
});

server.close();
await browser.close();
