// What the tests of the page share, whichever browser they open or none: one line a test, "passed: …" or
// "failed: …".

/** In ms; far longer than anything takes, so that a busy machine fails no test. */
export const patience = 180000;

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

/** Opens an address in an empty page of either driver, and keeps what is said and asked for there. */
export async function visit(page, address) {
  page.said = [];
  page.asked = [];
  page.on('console', (message) => page.said.push(`${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => page.said.push(String(error)));
  page.on('request', (request) => page.asked.push(request.url()));
  page.setDefaultTimeout(patience);
  await page.goto(address, { timeout: patience });
}
