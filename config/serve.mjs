import { createReadStream, existsSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".cjs": "text/javascript; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".xml": "application/xml",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

/** No inline script or style, no eval, no request to anywhere else. The Excel pane needs office.js beside it. */
const CONTENT_POLICY = "default-src 'self'; img-src 'self' blob:";

export const distribution = fileURLToPath(new URL("../dist/", import.meta.url));

/** Answers requests for files of dist/ and nothing else. */
export function answer(request, response) {
  const path = decodeURIComponent(new URL(request.url, "http://local").pathname);
  const wanted = normalize(path === "/" ? "/workbench.html" : path);
  const file = join(distribution, wanted);
  if (!file.startsWith(distribution) || !existsSync(file) || !statSync(file).isFile()) {
    response.writeHead(404, { "content-type": "text/plain" }).end("Not found\n");
    return;
  }
  response.writeHead(200, {
    "content-type": TYPES[extname(file)] ?? "application/octet-stream",
    "cache-control": "no-cache",
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
    ...(wanted === "/taskpane.html" ? {} : { "content-security-policy": CONTENT_POLICY }),
  });
  if (request.method === "HEAD") response.end();
  else createReadStream(file).pipe(response);
}

/**
 * Serves dist/ on this machine only.
 * @param {number} port - the port to try first; 0 for any; the next nine are tried when taken
 * @returns {Promise<{ address: string, close(): Promise<void> }>}
 */
export async function serve(port = 0) {
  for (let attempt = port; ; attempt += 1) {
    const server = createServer(answer);
    try {
      await new Promise((resolve, reject) => {
        server.once("error", reject);
        server.listen(attempt, "localhost", resolve);
      });
      return {
        address: `http://localhost:${server.address().port}/`,
        close: () => new Promise((resolve) => void (server.closeAllConnections(), server.close(resolve))),
      };
    } catch (error) {
      if (error.code !== "EADDRINUSE" || attempt >= port + 9) throw error;
    }
  }
}
