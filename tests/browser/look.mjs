// Opens reports in a real browser, as a reader would. Prints one line a test, "passed: …" or
// "failed: …". Arguments: the demo's report, the report with hostile names, one with
// trapped water, a folder for pictures.
import { pathToFileURL } from 'node:url';
import { expect, patience, test, until, visit } from './outcome.mjs';
import { launched, seriousOn } from './trial.mjs';

const [demo, hostile, trapped, folder] = process.argv.slice(2);
const browser = await launched();

async function open(file, options = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const page = await context.newPage();
  await visit(page, pathToFileURL(file).href);
  if (options.javaScriptEnabled !== false) await drawn(page);
  return page;
}

/** Waits until the picture is drawn and stands still. */
async function drawn(page) {
  const now = () => page.evaluate(() => document.querySelector('.stage')?.dataset.camera);
  await page.waitForSelector('.stage[data-camera]', { timeout: patience });
  let before;
  do {
    before = await now();
    await page.waitForTimeout(200);
  } while ((await now()) !== before);
}

/** How many colours the picture has, and all of its bytes as text. */
const picture = (page) => page.evaluate(() => {
  const drawn = document.querySelector('.stage canvas');
  const copy = document.createElement('canvas');
  [copy.width, copy.height] = [drawn.width, drawn.height];
  const context = copy.getContext('2d');
  context.drawImage(drawn, 0, 0);
  const bytes = new Uint32Array(context.getImageData(0, 0, copy.width, copy.height).data.buffer);
  return { colours: new Set(bytes).size, text: copy.toDataURL() };
});
const camera = (page) =>
  page.evaluate(() => document.querySelector('.stage').dataset.camera.split(' ').map(Number));
const apart = (a, b) => Math.hypot(...a.map((each, i) => each - b[i]));

const page = await open(demo);

await test('the report draws a picture that is not blank', async () => {
  const { colours } = await picture(page);
  expect(colours > 50, `${colours} colours`);
});

await test('the picture changes when it is turned by a key', async () => {
  const before = await picture(page);
  const eye = await camera(page);
  await page.focus('.stage canvas');
  await page.keyboard.press('ArrowRight');
  await until(async () => apart(await camera(page), eye) > 1, 'the same place');
  expect((await picture(page)).text !== before.text, 'the same picture');
});

await test('the picture changes when it is turned by the mouse', async () => {
  const eye = await camera(page);
  const box = await page.locator('.stage canvas').boundingBox();
  await page.mouse.move(box.x + 300, box.y + 200);
  await page.mouse.down();
  await page.mouse.move(box.x + 380, box.y + 230, { steps: 4 });
  await page.mouse.up();
  await until(async () => apart(await camera(page), eye) > 1, 'the same place');
});

await test('picking a finding moves the camera to it', async () => {
  const finding = await page.evaluate(() =>
    JSON.parse(document.getElementById('scene').textContent).findings.filter((each) => each.at)[1]);
  await page.click(`#${finding.id} button`);
  await until(async () => apart(await camera(page), finding.at) < 17, 'the camera stays away');
  expect((await page.textContent('.chosen-line')).includes(finding.message), 'its words are not shown');
  expect(await page.locator('.chosen-line svg.strip').count() === 1, 'the strip of its line is not shown');
});

await test('water that stays is shown in its attitude', async () => {
  const wet = await open(trapped);
  const dry = await picture(wet);
  const choice = wet.getByLabel('In the attitude');
  await choice.selectOption({ index: 1 });
  await until(async () => (await picture(wet)).text !== dry.text, 'the same picture');
  expect((await choice.locator('option').nth(1).textContent()).includes('in 1 of the lines'), 'not told');
  expect(wet.said.length === 0, wet.said.join('; '));
  await wet.context().close();
});

await test('a hidden part, a cut and a travel change the picture', async () => {
  await page.getByRole('button', { name: 'Slant' }).click();
  for (const change of [
    () => page.getByRole('slider', { name: 'From' }).fill('150'),
    () => page.getByRole('slider', { name: 'Travel' }).fill('100'),
    async () => {
      await page.locator('#picture-parts summary').click();
      await page.getByLabel('all channels').uncheck();
    },
  ]) {
    const before = await picture(page);
    await change();
    await until(async () => (await picture(page)).text !== before.text,
      `the same picture after ${change}`);
  }
});

await test('the view is kept when the page is loaded again', async () => {
  const eye = await camera(page);
  await page.reload();
  await drawn(page);
  expect(apart(await camera(page), eye) < 0.1, 'another place');
  expect(!(await page.getByLabel('all channels').isChecked()), 'the hidden part is back');
});

await test('no request leaves the page and nothing is said on the console', async () => {
  const own = pathToFileURL(demo).href;
  const others = page.asked.filter((url) => !url.startsWith(own));
  expect(others.length === 0, others.join(', '));
  expect(page.said.length === 0, page.said.join('; '));
});

await test('an automatic check of access finds nothing serious', async () => {
  for (const colorScheme of ['light', 'dark']) {
    const seen = await open(demo, { colorScheme });
    const serious = await seriousOn(seen);
    expect(!serious, `${colorScheme}: ${serious}`);
    await seen.context().close();
  }
});

await test('nothing is wider than a narrow screen', async () => {
  for (const [colorScheme, width] of [['light', 1280], ['dark', 1280], ['light', 400], ['dark', 400]]) {
    const seen = await open(demo, { colorScheme, viewport: { width, height: 900 } });
    const wide = await seen.evaluate(() => document.documentElement.scrollWidth);
    expect(wide <= width, `${wide} px on ${width}`);
    await seen.screenshot({ path: `${folder}/report-${colorScheme}-${width}.png` });
    await seen.context().close();
  }
});

await test('it can be read without JavaScript', async () => {
  const plain = await open(demo, { javaScriptEnabled: false });
  expect(await plain.locator('article.finding').first().isVisible(), 'no findings');
  expect(await plain.locator('.without-script').isVisible(), 'no word on the missing picture');
  expect(!(await plain.locator('#viewer').isVisible()), 'an empty viewer');
  await plain.context().close();
});

await test('hostile names show as text', async () => {
  const seen = await open(hostile);
  expect(await seen.evaluate(() => window.broken) === undefined, 'a name was run');
  expect(await seen.locator('script').count() === 2, 'a name became a script');
  expect(await seen.locator('img').count() === 0, 'a name became a picture');
  const title = await seen.textContent('h1');
  expect(title.includes('<script>window.broken = 1</script>') && title.includes('"quoted"'), title);
  const all = await seen.textContent('main');
  expect(all.includes('x'.repeat(10000)), 'a long name is cut');
  expect(await seen.evaluate(() => document.documentElement.scrollWidth) <= 1280, 'a long name widens the page');
  expect((await picture(seen)).colours > 10, 'no picture');
  expect(seen.said.length === 0 && seen.asked.length === 1, [...seen.said, ...seen.asked.slice(1)].join('; '));
  await seen.context().close();
});

await browser.close();
