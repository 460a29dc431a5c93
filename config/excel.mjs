// npm run excel: builds, serves dist/ over HTTPS with a development certificate, and says how to load the manifest.
import { createServer } from "node:https";
import { fileURLToPath } from "node:url";
import { ensureInstalled } from "./installation.mjs";

const PORT = 3000;

/** How an add-in is loaded from a file, by place. Source: Microsoft's pages on sideloading, August 2026. */
const sideloading = (path) => `
Load the add-in from this file:
  ${path}

Windows  Put the folder of the file on a share (folder, Properties, Sharing). In Excel: File, Options, Trust Center,
         Trust Center Settings, Trusted Add-in Catalogs; add the share's address (\\\\computer\\folder), tick Show in
         Menu, OK, and start Excel again. Then Home, Add-ins, More Add-ins, Shared Folder, Cellwright.
Mac      Copy the file to ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef (make the folder wef if it is
         not there) and start Excel again. Then Home, Add-ins, Cellwright (development).
Web      Open a workbook at excel.cloud.microsoft. Home, Add-ins, More Add-ins, My Add-ins, Upload My Add-in, and
         choose the file. The browser must trust https://localhost:${PORT}: open that address once.

Then choose Open Cellwright on the Home tab. Ctrl+C here stops the server.
`;

/** Key and certificate of this machine for https://localhost; made and, after asking, trusted the first time. */
async function developmentCertificate() {
  const { getHttpsServerOptions } = await import("office-addin-dev-certs");
  try {
    return await getHttpsServerOptions();
  } catch (error) {
    throw new Error(
      `The development certificate could not be made: ${error instanceof Error ? error.message : error}\n` +
        "Run npx office-addin-dev-certs install once by hand, answer what it asks, and try again.",
    );
  }
}

/**
 * Serves dist/ over HTTPS on this machine only.
 * @param {{ key: string | Buffer, cert: string | Buffer }} certificate
 * @param {(request: object, response: object) => void} answer
 */
export async function serveSecurely(certificate, answer, port = PORT) {
  const server = createServer(certificate, answer);
  await new Promise((resolve, reject) => {
    server.once("error", (error) =>
      reject(
        error.code === "EADDRINUSE"
          ? new Error(
              `Port ${port} is taken, and the manifest names it. Stop the program that uses it, then try again.`,
            )
          : error,
      ),
    );
    server.listen(port, "localhost", resolve);
  });
  return {
    address: `https://localhost:${server.address().port}/`,
    close: () => new Promise((resolve) => void (server.closeAllConnections(), server.close(resolve))),
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  ensureInstalled();
  const certificate = await developmentCertificate();
  process.stdout.write("Building …\n");
  const { build } = await import("./build.mjs");
  await build();
  const { answer } = await import("./serve.mjs");
  const { address } = await serveSecurely(certificate, answer);
  process.stdout.write(
    `Serving ${address}\n${sideloading(fileURLToPath(new URL("../dist/manifest.xml", import.meta.url)))}`,
  );
}
