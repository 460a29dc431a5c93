import webpack from "webpack";

const { Compilation, sources } = webpack;

/**
 * Marks every function in functions.json with `allowErrorForDataTypeAny`, which the metadata generator does not
 * know: only so does Excel hand error cells inside a range to a function instead of failing the whole call.
 */
export class AcceptErrorArguments {
  constructor(file) {
    this.file = file;
  }

  apply(compiler) {
    compiler.hooks.compilation.tap("AcceptErrorArguments", (compilation) => {
      compilation.hooks.processAssets.tap(
        { name: "AcceptErrorArguments", stage: Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE },
        () => {
          const asset = compilation.getAsset(this.file);
          if (asset === undefined) return;
          const metadata = JSON.parse(asset.source.source().toString());
          metadata.allowErrorForDataTypeAny = true;
          compilation.updateAsset(this.file, new sources.RawSource(`${JSON.stringify(metadata, null, 2)}\n`));
        },
      );
    });
  }
}
