// The static server of ./dev serve and of the browser tests.
//
//   node tools/serve.mjs [--dir dist] [--port 8080] [--brotli] [--until-stdin-ends]
//   node tools/serve.mjs --phone FOLDER [--port 8080] [--tls-port 8443]
//
// With --brotli a file that has one beside it that ends in .br is sent so. Port 0 takes
// a free one. The first line on stdout is
// "listening http://127.0.0.1:PORT". With --phone, FOLDER holds ca.crt,
// server.crt and server.key (tools/phone-certs.mjs): the program is served
// over https to every machine on the network, and plain http gives other
// machines nothing but the certificate and how to use it.

import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { createServer as createTlsServer } from 'node:https';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import sirv from 'sirv';

const { values: options } = parseArgs({
  options: {
    dir: { type: 'string', default: 'dist' },
    port: { type: 'string', default: '8080' },
    'tls-port': { type: 'string', default: '8443' },
    phone: { type: 'string' },
    brotli: { type: 'boolean', default: false },
    'until-stdin-ends': { type: 'boolean', default: false },
  },
});

const page = join(options.dir, 'index.html');
if (!existsSync(page)) {
  console.error(`serve: no build in ${options.dir}; run ./dev build`);
  process.exit(1);
}

// One policy, written once: the page's own meta tag. frame-ancestors counts only as a header.
const meta = readFileSync(page, 'utf8').match(
  /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/,
);
if (!meta) {
  console.error(`serve: ${page} has no Content-Security-Policy`);
  process.exit(1);
}

const SECURITY = {
  'Content-Security-Policy': `${meta[1]}; frame-ancestors 'none'`,
  // All that a page might ask a phone for and an engine knows by name, refused, but the
  // one that is used. Photos come through a file field, which asks for no permission.
  'Permissions-Policy': [
    ...'accelerometer camera display-capture geolocation gyroscope hid'.split(' '),
    ...'magnetometer microphone midi payment serial usb'.split(' '),
  ]
    .map((name) => `${name}=()`)
    .concat('screen-wake-lock=(self)')
    .join(', '),
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};
const NEVER_KEPT = new Set(['/', '/index.html', '/sw.js']);
const HASHED = /-[0-9a-f]{12,}(_bg)?\.(js|wasm|css)$/;

const files = sirv(options.dir, {
  dev: true, // reads the disk at each request, so a rebuild shows at once
  etag: true,
  brotli: options.brotli,
  setHeaders(response, path) {
    const kept = HASHED.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache';
    response.setHeader('Cache-Control', NEVER_KEPT.has(path) ? 'no-store' : kept);
  },
});

function app(request, response) {
  for (const [name, value] of Object.entries(SECURITY)) response.setHeader(name, value);
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { Allow: 'GET, HEAD' }).end();
    return;
  }
  files(request, response, () => {
    response.writeHead(404, { 'Content-Type': 'text/plain;charset=utf-8' }).end('Not found\n');
  });
}

/** What plain http gives to another machine: the certificate, and how to use it. */
function certificateOnly(request, response) {
  const path = new URL(request.url, 'http://here').pathname;
  if (path === '/coldsump-ca.crt') {
    response
      .writeHead(200, {
        'Content-Type': 'application/x-x509-ca-cert',
        'Content-Disposition': 'attachment; filename="coldsump-ca.crt"',
        'Cache-Control': 'no-store',
      })
      .end(readFileSync(join(options.phone, 'ca.crt')));
    return;
  }
  const host = (request.headers.host ?? '').replace(/:\d+$/, '');
  response
    .writeHead(path === '/' ? 200 : 404, { 'Content-Type': 'text/plain;charset=utf-8' })
    .end(
      `1. Get the certificate: http://${host}:${options.port}/coldsump-ca.crt\n` +
        `2. Trust it in the phone's settings.\n` +
        `3. Open https://${host}:${options['tls-port']}\n`,
    );
}

const isLocal = (address) => /^(::ffff:)?127\./.test(address ?? '') || address === '::1';

function listen(server, port, host) {
  server.on('error', (error) => {
    console.error(
      error.code === 'EADDRINUSE'
        ? `serve: port ${port} is taken; choose another with --port`
        : `serve: ${error.message}`,
    );
    process.exit(1);
  });
  return new Promise((done) => server.listen(port, host, () => done(server.address().port)));
}

const plain = createServer((request, response) => {
  const mine = !options.phone || isLocal(request.socket.remoteAddress);
  (mine ? app : certificateOnly)(request, response);
});
const port = await listen(plain, Number(options.port), options.phone ? '0.0.0.0' : '127.0.0.1');
options.port = String(port);
console.log(`listening http://127.0.0.1:${port}`);

if (options.phone) {
  const key = readFileSync(join(options.phone, 'server.key'));
  const cert = readFileSync(join(options.phone, 'server.crt'));
  const tls = createTlsServer({ key, cert }, app);
  const tlsPort = await listen(tls, Number(options['tls-port']), '0.0.0.0');
  options['tls-port'] = String(tlsPort);
  console.log(`listening https://0.0.0.0:${tlsPort}`);
}

if (options['until-stdin-ends']) {
  // A test that dies takes its server along.
  process.stdin.on('end', () => process.exit(0)).resume();
}
