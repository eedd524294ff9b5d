// What the tests in Chromium share.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { chromium } from 'playwright-core';
import { patience } from './outcome.mjs';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export const launched = () => chromium.launch({
  timeout: patience,
  executablePath: process.env.CHROMIUM || '/usr/bin/chromium',
  args: ['--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader',
    '--ignore-gpu-blocklist'],
});

/** What an automatic check of access finds serious on a page, in words; empty for nothing. */
export async function seriousOn(page, options = {}) {
  await page.evaluate(axe);
  const { violations } = await page.evaluate((asked) => window.axe.run(document, asked), options);
  return violations.filter((each) => ['serious', 'critical'].includes(each.impact))
    .map((each) => `${each.id}: ${each.nodes[0].html.slice(0, 200)}`).join('; ');
}
