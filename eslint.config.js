import tseslint from "typescript-eslint";
import hooks from "eslint-plugin-react-hooks";

export default tseslint.config(
  { ignores: ["dist/", "node_modules/", "tests/pictures/"] },
  ...tseslint.configs.recommended,
  {
    files: ["**/*.{ts,tsx}"],
    plugins: { "react-hooks": hooks },
    rules: {
      "react-hooks/rules-of-hooks": "error",
      "react-hooks/exhaustive-deps": "error",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
      "max-lines": ["error", { max: 400, skipBlankLines: true, skipComments: true }],
      "max-lines-per-function": ["error", { max: 90, skipBlankLines: true, skipComments: true }],
      "no-restricted-syntax": [
        "error",
        { selector: "ExportAllDeclaration", message: "name what a file gives" },
      ],
    },
  },
  {
    files: ["geometry/**/*.ts"],
    rules: {
      complexity: ["error", 20],
      "no-restricted-properties": [
        "error",
        { object: "Math", property: "random", message: "take a seeded source" },
        { object: "Date", property: "now", message: "the kernel has no clock" },
      ],
    },
  },
  { files: ["tests/**"], rules: { "max-lines-per-function": "off", "max-lines": "off" } },
);
