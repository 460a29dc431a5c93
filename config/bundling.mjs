/**
 * Runs webpack over configurations.
 * @param {import("webpack").Configuration[]} configurations
 * @returns {Promise<void>} rejects with webpack's own error text
 */
export async function bundle(configurations) {
  const { default: webpack } = await import("webpack");
  const compiler = webpack(configurations);
  const stats = await new Promise((resolve, reject) => {
    compiler.run((error, result) => (error ? reject(error) : resolve(result)));
  });
  await new Promise((resolve) => compiler.close(resolve));
  if (stats.hasErrors()) throw new Error(stats.toString("errors-only"));
}
