// What the tests in a browser share: one line a test, "passed: …" or "failed: …".
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { chromium } from 'playwright-core';

/** In ms; far longer than anything takes, so that a busy machine fails no test. */
export const patience = 180000;

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export const launched = () => chromium.launch({
  timeout: patience,
  executablePath: process.env.CHROMIUM || '/usr/bin/chromium',
  args: ['--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader',
    '--ignore-gpu-blocklist'],
});

export async function test(name, body) {
  try {
    await body();
    console.log(`passed: ${name}`);
  } catch (error) {
    console.log(`failed: ${name}: ${error.message.split('\n')[0]}`);
  }
}

export function expect(holds, words) {
  if (!holds) throw new Error(words);
}

/** Waits for something to hold; says what does not, if it never does. */
export async function until(holds, words) {
  for (const end = Date.now() + patience; !(await holds());) {
    expect(Date.now() < end, words);
    await new Promise((go) => setTimeout(go, 100));
  }
}

/** What an automatic check of access finds serious on a page, in words; empty for nothing. */
export async function seriousOn(page, options = {}) {
  await page.evaluate(axe);
  const { violations } = await page.evaluate((asked) => window.axe.run(document, asked), options);
  return violations.filter((each) => ['serious', 'critical'].includes(each.impact))
    .map((each) => `${each.id}: ${each.nodes[0].html.slice(0, 200)}`).join('; ');
}
