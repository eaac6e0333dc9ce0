import { describe } from "vitest";
import { keepClaims } from "../keep/keep-claims.ts";
import { memoryKeep } from "./memory-keep.ts";

describe("the keep these tests stand on is a keep", () => keepClaims(async () => memoryKeep()));
