import { createHash, randomBytes } from "node:crypto";
import type { DatabaseSyncInstance } from "@photostructure/sqlite";
import type { Role } from "../../core/log/roles.ts";

const DAY_MS = 86_400_000;
/** A device that was away longer is let in again by a new code. */
const MOST_AWAY_MS = 14 * DAY_MS;
const LONGEST_MS = 180 * DAY_MS;
/** How exactly the last visit is known; a finer one would be a write for every request. */
const SEEN_EVERY_MS = 3_600_000;

/** Whom a device is let in as. */
export interface Admitted {
  /** The name under which it writes its events. */
  readonly device: string;
  readonly role: Role;
  /** The person's code; null: several share the device, and each entry names its writer. */
  readonly person: string | null;
}

/** A device that was let in. Times are ms since 1970. */
export interface Device extends Admitted {
  readonly paired: number;
  readonly seen: number;
  /** When it was shown out; null: it may come in. */
  readonly ended: number | null;
}

/** As whom a device was let in before it was let in anew. */
export interface Former extends Admitted {
  /** ms since 1970: when that ended. */
  readonly until: number;
}

/** Who may come in. Of a token only its hash is kept. */
export interface DeviceBook {
  /** Lets a device in; an earlier one of the same name is shown out. @returns its token */
  admit(admitted: Admitted, now: number): string;
  /** The device whose token this is, while it may come in. */
  find(token: string, now: number): Device | null;
  /** As whom a device was let in before, in the last fortnight: what it wrote then it may still send. */
  former(device: string, now: number): readonly Former[];
  /** Every device, by name. */
  all(): readonly Device[];
  /** Shows a device out at once. @returns whether there was such a device that might come in */
  end(device: string, now: number): boolean;
}

export function deviceBook(file: DatabaseSyncInstance): DeviceBook {
  const columns = "device, role, person, paired, seen, ended";
  const admit = file.prepare(
    "insert or replace into device (device, role, person, token, paired, seen) values (?, ?, ?, ?, ?, ?)",
  );
  const leave = file.prepare(
    "insert into former (device, role, person, until) select device, role, person, coalesce(ended, ?) from device where device = ?",
  );
  const former = file.prepare(
    "select device, role, person, until from former where device = ? and until >= ?",
  );
  const find = file.prepare(`select ${columns} from device where token = ?`);
  const all = file.prepare(`select ${columns} from device order by device`);
  const touch = file.prepare("update device set seen = ? where device = ?");
  const end = file.prepare("update device set ended = ? where device = ? and ended is null");
  return {
    admit: ({ device, role, person }, now) => {
      const token = randomBytes(32).toString("base64url");
      leave.run(now, device);
      admit.run(device, role, person, hashOf(token), now, now);
      return token;
    },
    find: (token, now) => {
      const device = find.get(hashOf(token)) as Device | undefined; // the columns of the table
      if (!device || device.ended !== null || hasLapsed(device, now)) return null;
      if (now - device.seen >= SEEN_EVERY_MS) touch.run(now, device.device);
      return device;
    },
    former: (device, now) => former.all(device, now - MOST_AWAY_MS) as Former[], // the columns of the table
    all: () => all.all() as Device[], // the columns of the table
    end: (device, now) => end.run(now, device).changes > 0,
  };
}

const hasLapsed = ({ seen, paired }: Device, now: number): boolean =>
  now - seen > MOST_AWAY_MS || now - paired > LONGEST_MS;

/** A token is 256 random bits: nobody can try them out, so a plain hash is enough. */
const hashOf = (token: string): string => createHash("sha256").update(token).digest("hex");
