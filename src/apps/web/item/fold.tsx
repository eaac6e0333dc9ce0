import type { ReactNode } from "react";
import "./fold.css";

/** Something folded away under a line of words. */
export const Fold = (p: {
  readonly words: ReactNode;
  readonly isOpen?: boolean;
  readonly opened?: (isOpen: boolean) => void;
  readonly children: ReactNode;
}) => (
  <details
    className="fold"
    {...(p.isOpen === undefined ? {} : { open: p.isOpen })}
    onToggle={({ currentTarget }) => p.opened?.(currentTarget.open)}
  >
    <summary>{p.words}</summary>
    <div className="fold-inside">{p.children}</div>
  </details>
);
