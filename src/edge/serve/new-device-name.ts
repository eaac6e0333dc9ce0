import { randomBytes } from "node:crypto";

/** A name no device had before: entries of two browsers must never be taken for those of one. `laptop-3fa9` */
export const newDeviceName = (what: string): string => `${what}-${randomBytes(2).toString("hex")}`;
