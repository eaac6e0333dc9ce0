import swagger from "@fastify/swagger";
import { jsonSchemaTransform } from "fastify-type-provider-zod";
import { z } from "zod";
import { KINDS } from "../../core/log/kinds.ts";
import type { Api } from "./house.ts";

/** Makes the description out of the routes that are added after it. */
export async function describe(api: Api): Promise<void> {
  await api.register(swagger, {
    openapi: {
      openapi: "3.1.0",
      info: { title: "Leafward: a campaign's log", version: "1" },
      components: {
        schemas: payloads(),
        securitySchemes: { device: { type: "apiKey", in: "cookie", name: "leafward" } },
      },
      security: [{ device: [] }],
    },
    transform: jsonSchemaTransform,
  });
}

/** GET /api/description: the routes as OpenAPI, and what the payload of each kind of entry must be. */
export function serveDescription(api: Api): void {
  api.get(
    "/api/description",
    { schema: { summary: "This description, as OpenAPI", response: { 200: z.any() } } },
    async (_request, reply) => reply.type("application/json").send(JSON.stringify(api.swagger())),
  );
}

/** A day is a check of its own, which no JSON Schema can say; it stands there as anything. */
const payloads = () =>
  Object.fromEntries(
    Object.entries(KINDS).map(([kind, { payload }]) => [
      kind,
      z.toJSONSchema(payload, { unrepresentable: "any", io: "input" }) as Record<string, unknown>,
    ]),
  );
