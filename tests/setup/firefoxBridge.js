#!/usr/bin/env node
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { WebSocket, WebSocketServer } from 'ws';

/**
 * Stands between the browser library and Firefox: the library starts this file in place of Firefox, and both speak WebDriver
 * BiDi through it. It makes good the two things that Firefox 153 leaves out of the protocol as the library speaks it; all
 * else passes through as it is. FIREFOX_PATH names the real program.
 */
const LISTENING = /^WebDriver BiDi listening on (ws:\/\/\S+)/;

/** Asked of Firefox at every new page, and unknown to it. Scheme and motion are set when it is started. */
const UNKNOWN = 'emulation.setMediaFeaturesOverride';
/** Events by whose `download` the library tells one download from another. */
const DOWNLOADS = ['browsingContext.downloadWillBegin', 'browsingContext.downloadEnd'];

/** @param {WebSocket.RawData} data */
const read = (data) => JSON.parse(data.toString());

/** @param {WebSocket.RawData} data an event or an answer of Firefox */
function withDownload(data) {
  const message = read(data);
  if (DOWNLOADS.includes(message.method)) message.params.download ??= message.params.url;
  return JSON.stringify(message);
}

/**
 * @param {WebSocket} library
 * @param {string} address of Firefox
 */
function join(library, address) {
  const firefox = new WebSocket(address, { perMessageDeflate: false });
  const open = new Promise((resolve) => firefox.once('open', resolve));
  library.on('message', async (data) => {
    await open;
    const { id, method } = read(data);
    if (method === UNKNOWN) library.send(JSON.stringify({ type: 'success', id, result: {} }));
    else firefox.send(data.toString());
  });
  firefox.on('message', (data) => library.send(withDownload(data)));
  library.on('close', () => firefox.close());
  firefox.on('close', () => library.close());
  firefox.on('error', (error) => console.error(`Firefox cannot be reached: ${error.message}`));
}

/** @param {string} firefox address */
function serve(firefox) {
  const server = new WebSocketServer({ host: '127.0.0.1', port: 0 });
  server.on('connection', (library, { url }) => join(library, firefox + url));
  server.on('listening', () => {
    const { port } = /** @type {import('node:net').AddressInfo} */ (server.address());
    console.error(`WebDriver BiDi listening on ws://127.0.0.1:${port}`);
  });
}

const program = process.env['FIREFOX_PATH'];
if (!program) throw new Error('FIREFOX_PATH must name the Firefox to run.');
const child = spawn(program, process.argv.slice(2), { stdio: ['inherit', 'inherit', 'pipe'] });
createInterface({ input: child.stderr }).on('line', (line) => {
  const address = LISTENING.exec(line)?.[1];
  if (address) serve(address);
  else console.error(line);
});
child.on('error', (error) => {
  console.error(`${program} does not start: ${error.message}`);
  process.exit(1);
});
child.on('exit', (code) => process.exit(code ?? 1));
