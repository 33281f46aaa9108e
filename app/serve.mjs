// A small file server for the built page, with the headers that keep it to itself.
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';

const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.json': 'application/json',
  '.map': 'application/json',
};

/** Tried in turn where no port is asked for. */
const usualPorts = [4170, 4171, 4172, 4173, 0];

/**
 * The page brings its own policy in its head. A worker has one of its own: the two that play and weave run
 * the code that our compiler printed, and nothing else on the page may do so.
 */
function policyOf(name) {
  const evaluates = /^thread-/.test(name);
  const scripts = evaluates ? "'self' 'unsafe-eval'" : "'self'";
  return `default-src 'none'; script-src ${scripts}; connect-src 'self'`;
}

function headersOf(file) {
  const extension = extname(file);
  const name = file.split(sep).at(-1);
  return {
    'Content-Type': types[extension] ?? 'application/octet-stream',
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    // Built files carry a hash in their names, the page itself does not.
    'Cache-Control': extension === '.html' ? 'no-cache' : 'max-age=31536000, immutable',
    ...(extension === '.js' && { 'Content-Security-Policy': policyOf(name) }),
  };
}

function requestListener(folder) {
  return async (request, response) => {
    const refuse = (status) => response.writeHead(status, { 'Content-Type': 'text/plain' }).end();
    if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405);
    let path;
    try {
      path = decodeURIComponent(new URL(request.url, 'http://localhost').pathname);
    } catch {
      return refuse(400);
    }
    const file = normalize(join(folder, path.endsWith('/') ? `${path}index.html` : path));
    if (!file.startsWith(folder + sep)) return refuse(404);
    const found = await stat(file).catch(() => null);
    if (found === null || !found.isFile()) return refuse(404);
    response.writeHead(200, { ...headersOf(file), 'Content-Length': found.size });
    if (request.method === 'HEAD') return response.end();
    createReadStream(file).pipe(response);
  };
}

function listen(server, port) {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve(server.address().port);
    });
  });
}

/**
 * Serves a folder to this machine only.
 * @param port null: the first usual one that is free; 0: any that is free
 * @returns the address of the page
 */
export async function servePage(folder, port) {
  const server = createServer(requestListener(folder));
  for (const candidate of port === null ? usualPorts : [port]) {
    try {
      return `http://127.0.0.1:${await listen(server, candidate)}/`;
    } catch (error) {
      if (port !== null || error.code !== 'EADDRINUSE') throw error;
    }
  }
  throw new Error('no port is free');
}
