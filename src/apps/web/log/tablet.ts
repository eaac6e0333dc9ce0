import type { LogEvent } from "../../../core/log/event.ts";
import { fold } from "../../../core/log/fold.ts";
import { seenOf } from "../../../core/log/seen.ts";
import { type CampaignState, EMPTY_STATE, namesOn } from "../../../core/log/state.ts";
import { correctionOf } from "../../../core/log/subjects.ts";
import { done, type Outcome, type Problem, refused } from "../../../core/outcome/problem.ts";
import type { Day } from "../../../core/units/day.ts";
import { VIEWS, type ViewArgs, type ViewName, type ViewResult } from "../views.ts";
import { factOf, type OwnEntry, openDatabase, putFact, type TabletDatabase } from "./database.ts";
import { type ItemRows, openItemRows } from "./item-rows.ts";
import { type KeptLog, openKeptLog } from "./kept-log.ts";
import { type LastSeen, openLastSeen } from "./last-seen.ts";
import { type Now, nowMaker } from "./now.ts";
import { type Draft, entriesToSend, markAnswered, ownEntries, writeOwn } from "./own-entries.ts";
import { keepPicture, sendPictures } from "./pictures.ts";
import { heardWork, type PlannedWork, savedWork } from "./planned-work.ts";
import { ask, type Me, post, sendBatch } from "./server-line.ts";
import { newerTables, savedTables, type Tables } from "./tables.ts";

/** Whether this device may come in. */
export type Entrance =
  | { readonly kind: "in"; readonly me: Me }
  /** A code of the lead lets it in. */
  | { readonly kind: "door" }
  /** The server shows a plan alone: it has no log. */
  | { readonly kind: "plan alone" }
  /** Never let in, and the server is not reached. */
  | { readonly kind: "away" };

export interface Status {
  readonly line: "open" | "away";
  /** Own entries the server has not yet said it keeps. */
  readonly waiting: number;
  readonly refused: readonly { readonly id: string; readonly kind: string; readonly problem: Problem }[];
  readonly pictures: number;
  /** Entries that wait under an earlier name of this device, and cannot be sent under this one. */
  readonly elsewhere: { readonly entries: number; readonly names: readonly string[] };
  readonly me: Me;
  readonly today: Day;
  /** The lead has shown this device out, or it was away for too long: a new code lets it in again. */
  readonly isOut: boolean;
  /** Items whose care is still being decided, after the first opening. */
  readonly rowsToCome: number;
  /** Moves whenever something that views show may have changed. */
  readonly turn: number;
}

const MOST_SENT = 200;
const SEND_AGAIN_MS = 5000;

/** The log on this device, as the windows ask it. One runs in each window's worker; they share one database. */
export class Tablet {
  #database: TabletDatabase | null = null;
  #me: Me | null = null;
  #tables: Tables | null = null;
  #work: PlannedWork | null = null;
  #kept: KeptLog | null = null;
  #state: CampaignState | null = null;
  #line: Status["line"] = "away";
  #turn = 0;
  #isOut = false;
  #rows: ItemRows | null = null;
  #lastSeen: LastSeen | null = null;
  #isOpening = false;
  #isTending = false;
  #lastDay: Day | null = null;
  #lastPlace: unknown = null;
  #turns: Promise<unknown> = Promise.resolve();
  readonly #make = nowMaker();
  readonly #gone = new AbortController();
  readonly #siblings = new BroadcastChannel("leafward");
  #listener: ((status: Status) => void) | null = null;
  /** Entries the server has taken and this device has not heard back yet: they count on, or what was just written would be gone for a moment. */
  #underWay: readonly LogEvent[] = [];
  #soon: ReturnType<typeof setTimeout> | null = null;
  #counts: Pick<Status, "waiting" | "refused" | "pictures" | "elsewhere"> = {
    ...{ waiting: 0, refused: [], pictures: 0 },
    elsewhere: { entries: 0, names: [] },
  };

  /** Finds out whether this device may come in; what it has is opened first, so that no server is needed. */
  async enter(hasCode = false): Promise<Entrance> {
    this.#database ??= await openDatabase();
    const known = await factOf<Me>(this.#database, "me");
    if (known === null || hasCode) return this.#enterByServer(known);
    this.#me = known;
    this.#lastSeen = await openLastSeen(this.#database);
    this.#tell();
    void this.#open(known)
      .then(() => this.#enterByServer(known))
      .then(({ kind }) => {
        if (kind === "door") this.#shownOut();
      });
    return { kind: "in", me: known };
  }

  async #enterByServer(known: Me | null): Promise<Entrance> {
    const database = this.#database as TabletDatabase; // opened by enter
    const reached = await ask<Me>("/api/me");
    if (reached.kind === "refused" && reached.status === 404) return { kind: "plan alone" };
    if (reached.kind === "refused" && reached.status === 401) return { kind: "door" };
    const me = reached.kind === "answer" ? reached.value : known;
    if (me === null) return { kind: "away" };
    if (known !== null && (known.campaign !== me.campaign || known.role !== me.role))
      for (const each of ["state", "rows"]) await putFact(database, each, null); // another sight of the log
    await putFact(database, "me", me);
    void navigator.storage.persist?.(); // or a full disk may take away what waits
    await this.#open(me);
    return { kind: "in", me };
  }

  #shownOut(): void {
    this.#isOut = true;
    this.#tell();
  }

  /** Lets this device in by a code. */
  async pair(code: string): Promise<Outcome<Entrance>> {
    const reached = await post<unknown>("/api/pair", { code });
    if (reached.kind === "refused") return refused(reached.problem);
    if (reached.kind !== "answer") return refused(notReached);
    this.#isOut = false;
    return done(await this.enter(true));
  }

  listen(listener: (status: Status) => void): void {
    this.#listener = listener;
    this.#tell();
  }

  /** What a screen shows, made from all that is known here; null before the campaign's state is here. */
  view<N extends ViewName>(name: N, args: ViewArgs<N>): ViewResult<N> | null {
    const now = this.#now();
    if (now === null) return this.#lastSeen?.of(name, args) ?? null;
    const view = VIEWS[name] as unknown as (now: Now, ...args: ViewArgs<N>) => ViewResult<N>; // its own arguments
    const shown = view(now, ...args);
    this.#lastSeen?.note(name, args, shown);
    return shown;
  }

  /** Writes entries into the log, all or none; they are on this device's disk when it answers. @returns their ids */
  async write(drafts: readonly Draft[], person: string | null): Promise<Outcome<readonly string[]>> {
    return this.#inTurn(() => this.#write(drafts, person));
  }

  async #write(drafts: readonly Draft[], person: string | null): Promise<Outcome<readonly string[]>> {
    const now = this.#now();
    if (now === null || this.#database === null || this.#kept === null) return refused(notOpen);
    const full = drafts.map((draft) => ({
      ...draft,
      seen: draft.seen ?? seenOf(now.state, draft.kind, draft.payload as never), // kind and payload belong together
    })) as Required<Draft>[];
    const heard = this.#kept.heard();
    const written = await writeOwn(this.#database, full, now.me, person, heard, now.tables.book.tests);
    if (!written.ok) return written;
    this.#state = fold(written.value, now.state);
    this.#rows?.touch(written.value);
    await this.#count();
    this.#changed();
    this.#siblings.postMessage("wrote");
    void this.#send();
    return done(written.value.map(({ id }) => id));
  }

  /** Takes back what was just written: it stays in the log, and no longer counts. */
  async undo(ids: readonly string[], person: string | null): Promise<Outcome<readonly string[]>> {
    const database = this.#database;
    if (database === null) return refused(notOpen);
    const entries = await Promise.all(ids.map((id) => database.get("own", id)));
    const drafts = entries.flatMap((entry): Draft[] =>
      entry ? [{ kind: "eventCorrected", payload: correctionOf(entry.event), seen: [] }] : [],
    );
    return drafts.length === 0 ? refused(notOpen) : this.write(drafts.reverse(), person);
  }

  /** Keeps a picture on this device until the server has it. @returns its SHA-256 */
  async keepPicture(picture: Blob): Promise<Outcome<string>> {
    if (this.#database === null) return refused(notOpen);
    const name = await keepPicture(this.#database, picture);
    await this.#count();
    this.#tell();
    void this.#send();
    return done(name);
  }

  /** A picture that this device has not sent yet; null: the server has it. */
  async pictureHere(name: string): Promise<Blob | null> {
    return (await this.#database?.get("pictures", name)) ?? null;
  }

  /** Sends an entry again that was refused, once its reason is gone. */
  sendAgain(id: string): Promise<void> {
    return this.#standAgain(id, "waiting");
  }

  /** Leaves a refused entry lie: it stays on this device, and is shown no more. */
  giveUp(id: string): Promise<void> {
    return this.#standAgain(id, "given up");
  }

  async #standAgain(id: string, standing: OwnEntry["standing"]): Promise<void> {
    const entry = await this.#database?.get("own", id);
    if (entry?.standing !== "refused") return;
    await this.#database?.put("own", { event: entry.event, standing }, id);
    await this.#send();
  }

  /** Shows this device out; what it keeps stays on it. */
  async leave(): Promise<void> {
    await post("/api/leave", {});
    if (this.#database !== null) await putFact(this.#database, "me", null);
  }

  /** Looks for a newer plan. */
  async lookForPlan(): Promise<void> {
    if (this.#database === null) return;
    this.#work = await heardWork(this.#database);
    this.#changed();
  }

  async #open(me: Me): Promise<void> {
    const database = this.#database as TabletDatabase; // opened by enter
    this.#me = me;
    if (this.#isOpening) return;
    this.#isOpening = true;
    this.#lastSeen ??= await openLastSeen(database);
    const [kept, tables, work, rows] = await Promise.all([
      openKeptLog(
        database,
        me,
        (events) => this.#hear(events),
        (isOpen) => this.#hearLine(isOpen),
      ),
      savedTables(database),
      savedWork(database),
      openItemRows(database),
    ]);
    [this.#kept, this.#tables, this.#work, this.#rows] = [kept, tables, work, rows];
    const since = rows.day === this.#today(me) ? await kept.since(rows.cursor) : null;
    if (since === null) rows.touchAll(namesOn(kept.state(), "item"));
    else rows.touch(since);
    await this.#takeOver();
    void this.#refresh(database);
    void this.#kept.follow(this.#gone.signal);
    this.#siblings.onmessage = () => void this.#takeOver();
    setInterval(() => this.#nextMinute(), 60_000);
  }

  #hear(events: readonly LogEvent[] | "everything"): void {
    if (events === "everything") this.#rows?.touchAll(namesOn(this.#kept?.state() ?? EMPTY_STATE, "item"));
    else this.#rows?.touch(events);
    void this.#takeOver();
    if (events === "everything" || events.some(({ kind }) => kind === "planAccepted"))
      void this.lookForPlan();
  }

  /** With a new day every wait is another day old. */
  #nextMinute(): void {
    const day = this.#me === null ? null : this.#today(this.#me);
    if (day !== this.#lastDay && this.#kept !== null)
      this.#rows?.touchAll(namesOn(this.#kept.state(), "item"));
    this.#lastDay = day;
    this.#changed();
  }

  #today({ pretendDay }: Me): Day {
    return pretendDay ?? dayOf(new Date());
  }

  async #refresh(database: TabletDatabase): Promise<void> {
    const newer = await newerTables(database);
    if (newer !== null) {
      this.#tables = newer;
      this.#rows?.touchAll(namesOn(this.#kept?.state() ?? EMPTY_STATE, "item"));
      this.#changed();
    }
    this.#work = await heardWork(database);
    this.#changed();
  }

  /** What the server keeps with what waits here on top. */
  #takeOver(): Promise<void> {
    return this.#inTurn(async () => {
      if (this.#database === null || this.#kept === null) return;
      const waiting = (await ownEntries(this.#database, "waiting")).map(({ event }) => event);
      const kept = this.#kept.state();
      this.#underWay = this.#underWay.filter(
        ({ device, number }) => number > (kept.frontier.get(device)?.number ?? 0),
      );
      this.#state = fold([...this.#underWay, ...waiting], kept);
      this.#rows?.touch(waiting);
      await this.#count();
      this.#changed();
    });
  }

  /** One after the other: what is written while the state is made again must not be missing from it. */
  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const next = this.#turns.then(work);
    this.#turns = next.catch(() => {});
    return next;
  }

  #hearLine(isOpen: boolean): void {
    this.#line = isOpen ? "open" : "away";
    this.#tell();
    if (isOpen) void this.#send();
  }

  /** Sends what waits, one window at a time. */
  async #send(): Promise<void> {
    const [database, me] = [this.#database, this.#me];
    if (database === null || me === null) return;
    await navigator.locks.request("leafward send", { ifAvailable: true }, async (lock) => {
      if (lock === null) return;
      await sendPictures(database);
      for (;;) {
        const waiting = (await entriesToSend(database, me)).slice(0, MOST_SENT);
        if (waiting.length === 0) break;
        const answers = await sendBatch(waiting);
        if (answers === null) {
          if (this.#line === "open") this.#sendSoon(); // it held on, and will not say that it is back
          break;
        }
        const taken = new Set(answers.flatMap(({ id, answer }) => (answer === "kept" ? [id] : [])));
        this.#underWay = [...this.#underWay, ...waiting.filter(({ id }) => taken.has(id))];
        const marked = await markAnswered(database, answers);
        if (marked.kept + marked.refused === 0) break;
      }
    });
    await this.#takeOver();
  }

  #sendSoon(): void {
    this.#soon ??= setTimeout(() => {
      this.#soon = null;
      void this.#send();
    }, SEND_AGAIN_MS);
  }

  async #count(): Promise<void> {
    const database = this.#database;
    if (database === null) return;
    const [waiting, refusals, pictures] = await Promise.all([
      ownEntries(database, "waiting"),
      ownEntries(database, "refused"),
      database.count("pictures"),
    ]);
    const others = waiting.filter(({ event }) => event.device !== this.#me?.device);
    const names = [...new Set(others.map(({ event }) => event.device))];
    const said = refusals.flatMap(({ event, problem }) =>
      problem ? [{ id: event.id, kind: event.kind, problem }] : [],
    );
    this.#counts = {
      ...{ waiting: waiting.length - others.length, refused: said, pictures },
      elsewhere: { entries: others.length, names },
    };
  }

  #now(): ReturnType<ReturnType<typeof nowMaker>> {
    if (this.#me === null || this.#state === null || this.#tables === null || this.#rows === null)
      return null;
    const clock = new Date();
    const today = this.#today(this.#me);
    const minute = clock.getHours() * 60 + clock.getMinutes();
    return this.#make({
      ...{ me: this.#me, today, minute },
      ...{ state: this.#state, tables: this.#tables, work: this.#work },
      ...{ rows: this.#rows.list(), rowsToCome: this.#rows.toCome() },
    });
  }

  #changed(): void {
    this.#tendRows();
    this.#turn++;
    this.#tell();
  }

  /** A few rows are made at once; many in pieces, so that whoever asks meanwhile is answered. */
  #tendRows(): void {
    const [now, rows, kept] = [this.#now(), this.#rows, this.#kept];
    if (now === null || rows === null || kept === null) return;
    if (now.house.place !== this.#lastPlace && this.#lastPlace !== null) rows.touchAll(now.itemIds);
    this.#lastPlace = now.house.place;
    if (rows.toCome() === 0) return;
    const isMore = rows.work((id) => now.once(id));
    if (!isMore) {
      void rows.save(kept.cursor(), now.today);
      return;
    }
    if (this.#isTending) return;
    this.#isTending = true;
    setTimeout(() => {
      this.#isTending = false;
      this.#changed();
    }, 0);
  }

  #tell(): void {
    if (this.#listener === null || this.#me === null) return;
    this.#listener({
      ...{ line: this.#line, ...this.#counts, me: this.#me, isOut: this.#isOut, turn: this.#turn },
      ...{ today: this.#today(this.#me), rowsToCome: this.#rows?.toCome() ?? 0 },
    });
  }
}

/** The day on this device's own calendar. */
const dayOf = (clock: Date): Day =>
  [clock.getFullYear(), clock.getMonth() + 1, clock.getDate()]
    .map((each) => String(each).padStart(2, "0"))
    .join("-") as Day; // year, month, day

const notReached: Problem = {
  code: "server-away",
  severity: "stop",
  remedy: "Stand nearer to the laptop, or look whether Leafward runs there; then try again.",
};
const notOpen: Problem = {
  code: "log-not-here",
  severity: "stop",
  remedy: "Wait until the campaign is here; the first time the server must be in reach.",
};
