import { type ReactNode, useId } from "react";
import "./do-button.css";

/** A button that says why where it cannot be used now. */
export function DoButton(p: {
  /** Null: it can be used. */
  readonly whyNot: string | null;
  readonly act: () => void;
  readonly isMain?: boolean;
  readonly children: ReactNode;
}) {
  const reason = useId();
  return (
    <span className="do-button" data-main={p.isMain ?? false}>
      <button
        type="button"
        aria-disabled={p.whyNot !== null}
        {...(p.whyNot === null ? {} : { "aria-describedby": reason })}
        onClick={() => p.whyNot === null && p.act()}
      >
        {p.children}
      </button>
      {p.whyNot !== null && (
        <span id={reason} className="quiet">
          {p.whyNot}
        </span>
      )}
    </span>
  );
}
