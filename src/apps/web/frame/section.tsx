import type { ReactNode } from "react";
import "./section.css";

/** A part of the page with its heading; `intro` says in a line what it shows. */
export const Section = (p: { id: string; heading: string; intro?: string; children: ReactNode }) => (
  <section className="section" id={p.id} aria-labelledby={`${p.id}-heading`}>
    <h2 id={`${p.id}-heading`}>{p.heading}</h2>
    {p.intro && <p className="quiet">{p.intro}</p>}
    {p.children}
  </section>
);

/** What stands where nothing is to show. */
export const Empty = (p: { title: string; help: string }) => (
  <p className="section-empty">
    <strong>{p.title}.</strong> {p.help}
  </p>
);
