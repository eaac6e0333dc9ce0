import type { IncomingMessage, ServerResponse } from "node:http";
import type { FastifyBaseLogger, FastifyInstance, FastifyRequest, RawServerDefault } from "fastify";
import type { ZodTypeProvider } from "fastify-type-provider-zod";
import type { RoleTable } from "../../core/log/may-do.ts";
import type { Day } from "../../core/units/day.ts";
import type { Device, DeviceBook } from "../../edge/serve/device-book.ts";
import type { LogDesk } from "../../edge/serve/log-desk.ts";
import type { PairingCodes } from "../../edge/serve/pairing-codes.ts";
import type { Refusals } from "../../edge/serve/refusals.ts";

/** What the routes of one campaign's server work with. */
export interface House {
  /** The campaign's folder; pictures go there. */
  readonly folder: string;
  readonly desk: LogDesk;
  readonly devices: DeviceBook;
  readonly codes: PairingCodes;
  readonly refusals: Refusals;
  readonly roles: RoleTable;
  /** Whether the line is TLS. */
  readonly secure: boolean;
  /** The day it is taken to be, where somebody looks around a demo; null: as the clocks say. */
  readonly pretendDay: Day | null;
  /** ms since 1970. */
  now(): number;
}

/** A server whose bodies and answers are held against zod schemas. */
export type Api = FastifyInstance<
  RawServerDefault,
  IncomingMessage,
  ServerResponse,
  FastifyBaseLogger,
  ZodTypeProvider
>;

declare module "fastify" {
  interface FastifyRequest {
    /** Who asks; null: nobody who was let in. */
    device: Device | null;
  }
}

/** The device that asks, behind the door. */
export function insider({ device }: Pick<FastifyRequest, "device">): Device {
  if (device === null) throw new Error("This route stands behind the door.");
  return device;
}
