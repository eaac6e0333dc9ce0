import { sayMinutes, sayNumber } from "../../../core/say/dates.ts";
import { sayClock } from "../../../core/say/day-sheet.ts";
import { atWork as words } from "../../../core/say/rooms/at-work.ts";
import { count, LOCALE } from "../frame/reader.ts";
import "./account.css";
import { useMaskOff } from "./use-work.ts";
import type { AccountShown, AtWork } from "./views.ts";

const minutes = (n: number): string => sayMinutes(n, LOCALE);
const number = (n: number): string => sayNumber(n, LOCALE);

/** How the one at work stands to the limits: what is left, and a clear stop. */
export function Account({ at }: { readonly at: AtWork }) {
  const { account } = at;
  if (account === null)
    return (
      <section className="account" aria-label={words.account}>
        <p>
          <strong>{words.cleanWork}.</strong> {words.cleanWorkHelp}
        </p>
      </section>
    );
  return (
    <section className="account" aria-label={words.account}>
      <h2>{words.account}</h2>
      <dl className="account-figures">
        <Figure name={words.words.today} says={words.leftToday(minutes(account.leftToday))}>
          {words.today(number(account.today), minutes(account.limits.exposedMinutesADay))}
        </Figure>
        <Figure name={words.words.mask} says={maskLine(account)}>
          {account.maskLeft !== null &&
            words.maskWorn(number(account.maskWorn), minutes(account.limits.maskMinutes))}
        </Figure>
        <Figure
          name={words.words.week}
          says={words.week(
            number(account.daysThisWeek),
            number(account.limits.exposedDaysAWeek),
            minutes(account.week),
          )}
        />
        <Figure name={words.words.row} says={words.row(count(account.daysInARow))}>
          {words.rowLimit(number(account.limits.exposedDaysInARow))}
        </Figure>
      </dl>
      <AccountCall account={account} runs={at.running?.exposed ?? false} />
      {account.stop === "mask" && account.breakUntil === null && at.running === null && <MaskOff />}
      <p className="quiet account-source">{words.sources(account.sources.join("; "))}</p>
    </section>
  );
}

const Figure = (p: { name: string; says: string; children?: React.ReactNode }) => (
  <div>
    <dt>{p.name}</dt>
    <dd>
      <strong>{p.says}</strong>
      {p.children && <span className="quiet">{p.children}</span>}
    </dd>
  </div>
);

function maskLine({ maskLeft, breakUntil }: AccountShown): string {
  if (maskLeft === null) return words.noMaskLimit;
  return breakUntil === null ? words.mask(minutes(maskLeft)) : words.breakUntil(sayClock(breakUntil, LOCALE));
}

/** So long before a limit it is told. Common practice, no source. */
const WARN_MINUTES = 10;

/** What is called out as the minutes run: a warning, then the stop. In the page from the start, so that it is heard. */
function AccountCall({ account, runs }: { readonly account: AccountShown; readonly runs: boolean }) {
  const { leftToday, maskLeft, stop } = account;
  const mask = maskLeft ?? Number.POSITIVE_INFINITY;
  const nearest = Math.min(mask, leftToday);
  const warns = runs && stop === null && nearest <= WARN_MINUTES;
  return (
    <>
      <p role="status" className="account-warning">
        {warns && words.warning(minutes(nearest), mask <= leftToday ? "mask" : "day")}
      </p>
      <p role="alert" className="account-stop">
        {stop !== null && (runs ? words.stopNow(words.stops[stop]) : words.stops[stop])}
      </p>
    </>
  );
}

function MaskOff() {
  const off = useMaskOff();
  return (
    <button type="button" onClick={off}>
      {words.maskOff}
    </button>
  );
}
