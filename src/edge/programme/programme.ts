import { sql } from "kysely";
import type { LogEvent } from "../../core/log/event.ts";
import type { Outcome } from "../../core/outcome/problem.ts";
import type { Keep } from "../keep/keep.ts";
import { openDatabaseKeep } from "../keep/open-keep.ts";
import { openDatabase } from "../keep/postgres-base.ts";
import type { CampaignSummary } from "./summary.ts";

/** A campaign of the programme as its log and its last plan tell it. */
export interface CampaignRow {
  readonly campaign: string;
  readonly last: { readonly at: number; readonly kind: string; readonly device: string };
  /** Null: no worker has planned it yet. */
  readonly summary: CampaignSummary | null;
  /** Whether entries came since. */
  readonly behind: boolean;
}

/** Many campaigns in one PostgreSQL. */
export interface Programme {
  readonly keep: Keep;
  /** Every campaign, by name. */
  campaigns(): Promise<readonly CampaignRow[]>;
  /** @param place up to which of its entries the summary tells */
  saveSummary(campaign: string, place: number, summary: CampaignSummary): Promise<void>;
  close(): Promise<void>;
}

/** A summary of another shape is no summary: a worker makes it anew. */
const SHAPE = 1;

type Tables = {
  leafward_summary: { campaign: string; place: number; shape: number; body: string };
};

export async function openProgramme(url: string): Promise<Outcome<Programme>> {
  const keep = await openDatabaseKeep(url);
  if (!keep.ok) return keep;
  const base = await openDatabase(url);
  if (!base.ok) return base;
  const db = base.value.db.withTables<Tables>();
  await base.value.db.transaction().execute(async (work) => {
    await base.value.enter(work); // two that make one table at a time fail
    await work.schema
      .createTable("leafward_summary")
      .ifNotExists()
      .addColumn("campaign", "text", (column) => column.primaryKey())
      .addColumn("place", "integer", (column) => column.notNull())
      .addColumn("shape", "integer", (column) => column.notNull())
      .addColumn("body", "text", (column) => column.notNull())
      .execute();
  });
  return {
    ok: true,
    value: {
      keep: keep.value,
      campaigns: async () => (await LISTING.execute(db)).rows.map(rowOf),
      saveSummary: async (campaign, place, summary) => {
        const row = { place, shape: SHAPE, body: JSON.stringify(summary) };
        await db
          .insertInto("leafward_summary")
          .values({ campaign, ...row })
          .onConflict((conflict) =>
            conflict.column("campaign").doUpdateSet(row).where("leafward_summary.place", "<=", place),
          )
          .execute();
      },
      close: async () => {
        await keep.value.close();
        await base.value.close();
      },
    },
  };
}

interface Listed {
  readonly campaign: string;
  readonly place: number;
  readonly body: string;
  readonly told: number | null;
  readonly summary: string | null;
}

/** Steps along the index from name to name and takes the end of each: its work grows with the campaigns, and not with their entries. */
const LISTING = sql<Listed>`
  with recursive named as (
    (select campaign from leafward_event order by campaign limit 1)
    union all
    select (select e.campaign from leafward_event e where e.campaign > named.campaign order by e.campaign limit 1)
    from named where named.campaign is not null
  )
  select named.campaign, last.place, last.body, s.place as told, s.body as summary
  from named
  cross join lateral (
    select e.place, e.body from leafward_event e where e.campaign = named.campaign order by e.place desc limit 1
  ) last
  left join leafward_summary s on s.campaign = named.campaign and s.shape = ${sql.lit(SHAPE)}
  where named.campaign is not null
  order by named.campaign`;

function rowOf({ campaign, place, body, told, summary }: Listed): CampaignRow {
  const { clock, kind, device } = JSON.parse(body) as LogEvent; // the keep judged it
  return {
    campaign,
    last: { at: clock.wall, kind, device },
    summary: summary === null ? null : (JSON.parse(summary) as CampaignSummary), // of this shape
    behind: told === null || told < place,
  };
}
