import { existsSync, readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { schemaFiles } from "../../../src/edge/intake/schema-files.ts";
import { allTables } from "../../../src/edge/intake/tables/all.ts";
import { projectFolder, publishedFolder } from "../../../src/edge/published.ts";

const folder = join(publishedFolder(), "schemas");
const read = (name: string): string => readFileSync(join(folder, name), "utf8");

describe("the published table schemas", () => {
  test("there is one for each table and no other", () => {
    expect(readdirSync(folder).sort()).toEqual([...schemaFiles().keys()].sort());
  });
  test.each([...schemaFiles()])(
    "%s is what the reader's description gives (npm run schemas writes it)",
    (name, text) => {
      expect(read(name)).toBe(text);
    },
  );
  test("every link points to a column of another table", () => {
    for (const [name] of schemaFiles()) {
      const { foreignKeys = [] } = JSON.parse(read(name)) as {
        foreignKeys?: { reference: { resource: string; fields: string } }[];
      };
      for (const { reference } of foreignKeys)
        expect(
          Object.keys(allTables.find((table) => table.name === reference.resource)?.columns ?? {}),
        ).toContain(reference.fields);
    }
  });
});

// Frictionless Table Schema, JSON Schema profile of the specification (draft-04), from the npm package tableschema.
const profile = join(projectFolder(), "..", "shared", "data", "schemas", "frictionless", "table-schema.json");
test.skipIf(!existsSync(profile)).each([...schemaFiles().keys()])(
  "%s is a valid Frictionless Table Schema (skipped where the profile is absent)",
  (name) => {
    const require = createRequire(import.meta.url);
    const { default: Ajv } = require("ajv") as {
      default: new (
        options: object,
      ) => { compile(schema: object): ((data: unknown) => boolean) & { errors?: unknown } };
    };
    const { $schema: _, ...schema } = JSON.parse(readFileSync(profile, "utf8")) as Record<string, unknown>;
    const validate = new Ajv({ strict: false, logger: false }).compile(schema); // the profile uses nothing that draft 07 reads otherwise
    expect([validate(JSON.parse(read(name))), validate.errors]).toEqual([true, null]);
  },
);
