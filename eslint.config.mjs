import jsdoc from "eslint-plugin-jsdoc";
import tseslint from "typescript-eslint";

/** Days are numbers and chance comes in as an argument: the domain has no clock, no locale, no dice. */
const FORBIDDEN_IN_DOMAIN = ["Date", "Intl", "performance", "fetch", "setTimeout"].map((name) => ({
  name,
  message: "src/domain is pure: pass what you need in as an argument.",
}));

export default tseslint.config(
  { ignores: ["dist/", "node_modules/", "tests/fixtures/"] },
  ...tseslint.configs.strict,
  {
    files: ["**/*.ts"],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    plugins: { jsdoc },
    rules: {
      "@typescript-eslint/no-floating-promises": "error",
      "@typescript-eslint/no-misused-promises": ["error", { checksVoidReturn: { arguments: false } }],
      "@typescript-eslint/switch-exhaustiveness-check": [
        "error",
        { considerDefaultExhaustiveForUnions: true },
      ],
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/no-non-null-assertion": "error",
      "no-console": "error",
      eqeqeq: "error",
    },
  },
  {
    files: ["src/**/*.ts", "functions/**/*.ts", "taskpane/**/*.ts"],
    rules: {
      "jsdoc/require-jsdoc": [
        "error",
        {
          publicOnly: true,
          require: { FunctionDeclaration: true, ArrowFunctionExpression: true, ClassDeclaration: true },
        },
      ],
    },
  },
  {
    files: ["src/domain/**/*.ts"],
    rules: {
      "no-restricted-globals": ["error", ...FORBIDDEN_IN_DOMAIN],
      "no-restricted-properties": [
        "error",
        {
          object: "Math",
          property: "random",
          message: "Take a generator as an argument (seeded-random.ts).",
        },
      ],
    },
  },
);
