import { useEffect } from "react";
import { frame, LANGUAGE } from "../../core/say/page.ts";
import { Answer } from "./answer/answer.tsx";
import { Binds } from "./binds/binds.tsx";
import { Floor } from "./floor/floor.tsx";
import { Contents } from "./frame/contents.tsx";
import { Header } from "./frame/header.tsx";
import { LeftItems } from "./left/left-items.tsx";
import { Orders } from "./orders/orders.tsx";
import "./page.css";
import { Papers } from "./papers/papers.tsx";
import { People } from "./people/people.tsx";
import { Picture } from "./picture/picture.tsx";
import { Sheets } from "./sheets/sheets.tsx";
import { usePlan } from "./use-plan.ts";

/** The campaign on one page. */
export function Page() {
  const { state, again } = usePlan();
  const title = state.kind === "open" ? frame.title(state.plan.campaign) : frame.product;
  useEffect(() => {
    document.title = title;
    document.documentElement.lang = LANGUAGE.code;
    document.documentElement.dir = LANGUAGE.direction;
  }, [title]);
  if (state.kind === "opening")
    return (
      <p className="page-note" role="status">
        {frame.loading}
      </p>
    );
  if (state.kind === "failed")
    return (
      <main className="page-note">
        <h1>{frame.failed}</h1>
        <p>{frame.failedHelp}</p>
        <button type="button" onClick={again}>
          {frame.retry}
        </button>
      </main>
    );
  const { plan, papers } = state;
  return (
    <>
      <a className="skip" href="#finish">
        {frame.skip}
      </a>
      <Header plan={plan} />
      <Contents />
      <main className="page-main">
        <Answer plan={plan} />
        <Floor plan={plan} />
        <Binds plan={plan} />
        <Picture plan={plan} />
        <People plan={plan} />
        <LeftItems plan={plan} />
        <Orders plan={plan} />
        <Sheets plan={plan} />
        <Papers papers={papers} />
      </main>
      <footer className="page-foot">{frame.caution}</footer>
    </>
  );
}
