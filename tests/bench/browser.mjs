// A page in headless Chromium, over WebDriver: open, run a script, close.

import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';

/** The first line of a child's output that matches, as its first group. */
export async function says(child, pattern) {
  for await (const line of createInterface({ input: child.stdout })) {
    const found = line.match(pattern);
    if (found) return found[1];
  }
  throw new Error(`${child.spawnfile} ended without saying ${pattern}`);
}

/**
 * Opens `url`; answers the browser's version, `run(script)`, `later(script, ...args)` whose script
 * answers through its last argument, `cdp(command, params)`, `goto(url)`, `tap(selector)`,
 * `type(selector, text)` and `close()`. A profile that is given stays when it is closed.
 */
export async function openPage(url, kept) {
  const driver = spawn('chromedriver', ['--port=0'], { stdio: ['ignore', 'pipe', 'inherit'] });
  const profile = kept ?? mkdtempSync(join(tmpdir(), 'coldsump-bench-'));
  let session;
  const ask = async (method, path, body) => {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, {
      method,
      body: body && JSON.stringify(body),
    });
    const { value } = await answer.json();
    if (!answer.ok) throw new Error(`${value.error}: ${value.message}`);
    return value;
  };
  const close = async () => {
    try {
      if (session) await ask('DELETE', session);
    } finally {
      driver.kill();
      if (!kept) rmSync(profile, { recursive: true, force: true, maxRetries: 20 });
    }
  };
  const port = await says(driver, /started successfully on port (\d+)/);
  try {
    const args = [
      '--headless=new',
      // Containers and root have no sandbox; the page is our own.
      '--no-sandbox',
      '--disable-gpu',
      // What lies outside the window is not painted, whatever size is emulated.
      '--window-size=500,1000',
      '--disable-quic',
      '--disable-dev-shm-usage',
      '--disable-background-networking',
      '--disable-component-update',
      '--no-first-run',
      `--user-data-dir=${profile}`,
    ];
    const wanted = { 'goog:chromeOptions': { args }, timeouts: { script: 600_000 } };
    const begun = await ask('POST', '/session', { capabilities: { alwaysMatch: wanted } });
    session = `/session/${begun.sessionId}`;
    const { browserName, browserVersion } = begun.capabilities;
    await ask('POST', `${session}/url`, { url });
    const run = (script) => ask('POST', `${session}/execute/sync`, { script, args: [] });
    const later = (script, ...args) => ask('POST', `${session}/execute/async`, { script, args });
    const cdp = (cmd, params) => ask('POST', `${session}/goog/cdp/execute`, { cmd, params });
    const goto = (where) => ask('POST', `${session}/url`, { url: where });
    const find = async (value) => {
      const found = await ask('POST', `${session}/element`, { using: 'css selector', value });
      // Above the action bar, as a thumb would scroll it.
      await ask('POST', `${session}/execute/sync`, {
        script: "arguments[0].scrollIntoView({ block: 'center' })",
        args: [found],
      });
      return `${session}/element/${Object.values(found)[0]}`;
    };
    const tap = async (selector) => ask('POST', `${await find(selector)}/click`, {});
    const type = async (selector, text) => ask('POST', `${await find(selector)}/value`, { text });
    return { version: `${browserName} ${browserVersion}`, run, later, cdp, goto, tap, type, close };
  } catch (error) {
    await close();
    throw error;
  }
}
