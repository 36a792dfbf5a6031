// Makes what a phone on the same network needs for https: a certificate
// authority of this machine alone, and a server certificate for its addresses.
// Prints the addresses, one a line. Usage: node tools/phone-certs.mjs FOLDER
//
// The authority is limited by name constraints to private addresses and this
// machine's own, so a phone that trusts it trusts it for nothing else on the
// internet. Its key never leaves FOLDER, which git ignores. Needs openssl.

import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname, networkInterfaces } from 'node:os';
import { join, resolve } from 'node:path';

const folder = resolve(process.argv[2] ?? '.phone');
mkdirSync(folder, { recursive: true, mode: 0o700 });
const at = (name) => join(folder, name);
const openssl = (...args) => execFileSync('openssl', args, { stdio: ['ignore', 'pipe', 'pipe'] });

// RFC 1918, RFC 3927 (link-local) and RFC 6598 (shared) blocks, and this machine itself.
const BLOCKS = [
  ['10.0.0.0', '255.0.0.0'],
  ['172.16.0.0', '255.240.0.0'],
  ['192.168.0.0', '255.255.0.0'],
  ['169.254.0.0', '255.255.0.0'],
  ['100.64.0.0', '255.192.0.0'],
  ['127.0.0.0', '255.0.0.0'],
];
const number = (ip) => ip.split('.').reduce((sum, part) => sum * 256 + Number(part), 0);
const isPrivate = (ip) =>
  BLOCKS.some(([net, mask]) => (number(ip) & number(mask)) === (number(net) & number(mask)));

// Bridges to containers and virtual machines are not where a phone is.
const INNER = /^(docker|br-|veth|virbr|lxc|podman)/;
const addresses = Object.entries(networkInterfaces())
  .filter(([name]) => !INNER.test(name))
  .flatMap(([, faces]) => faces)
  .filter((face) => face.family === 'IPv4' && !face.internal)
  .map((face) => face.address);
if (addresses.length === 0) {
  console.error('phone: this machine is on no network');
  process.exit(1);
}
const own = addresses.filter((ip) => !isPrivate(ip)).map((ip) => [ip, '255.255.255.255']);
const permitted = [...BLOCKS, ...own].map(([net, mask]) => `permitted;IP:${net}/${mask}`);

const stillGood = (file) => {
  try {
    openssl('x509', '-in', at(file), '-noout', '-checkend', String(7 * 86_400));
    return true;
  } catch {
    return false;
  }
};

const holds = (file, line) => existsSync(at(file)) && readFileSync(at(file), 'utf8').includes(line);

const covered = own.every(([ip, mask]) => holds('ca.conf', `;IP:${ip}/${mask}`));
if (!covered || !existsSync(at('ca.key')) || !stillGood('ca.crt')) {
  writeFileSync(
    at('ca.conf'),
    `[req]
distinguished_name = name
x509_extensions = authority
prompt = no
[name]
CN = Coldsump on ${hostname().slice(0, 40)}
[authority]
basicConstraints = critical, CA:TRUE, pathlen:0
keyUsage = critical, keyCertSign, cRLSign
subjectKeyIdentifier = hash
nameConstraints = critical, permitted;DNS:localhost, ${permitted.join(', ')}
`,
  );
  openssl('ecparam', '-name', 'prime256v1', '-genkey', '-noout', '-out', at('ca.key'));
  openssl('req', '-x509', '-new', '-sha256', '-days', '730', '-config', at('ca.conf'),
    '-key', at('ca.key'), '-out', at('ca.crt'));
  rmSync(at('server.crt'), { force: true });
}

const names = ['DNS:localhost', 'IP:127.0.0.1', ...addresses.map((ip) => `IP:${ip}`)].join(', ');
const current = holds('server.conf', `= ${names}\n`) && existsSync(at('server.key'));
if (!current || !stillGood('server.crt')) {
  // 397 days: the longest that every browser accepts.
  writeFileSync(
    at('server.conf'),
    `[req]
distinguished_name = name
prompt = no
[name]
CN = Coldsump
[server]
basicConstraints = critical, CA:FALSE
keyUsage = critical, digitalSignature
extendedKeyUsage = serverAuth
authorityKeyIdentifier = keyid
subjectAltName = ${names}
`,
  );
  openssl('ecparam', '-name', 'prime256v1', '-genkey', '-noout', '-out', at('server.key'));
  openssl('req', '-new', '-sha256', '-config', at('server.conf'), '-key', at('server.key'),
    '-out', at('server.csr'));
  openssl('x509', '-req', '-sha256', '-days', '397', '-in', at('server.csr'), '-CA', at('ca.crt'),
    '-CAkey', at('ca.key'), '-CAcreateserial', '-extfile', at('server.conf'),
    '-extensions', 'server', '-out', at('server.crt'));
}

console.log(addresses.join('\n'));
