import { type ReactNode, useEffect, useRef } from "react";

let hasMoved = false;
addEventListener("hashchange", () => {
  hasMoved = true;
});

/** The heading of a screen; the focus goes to it when somebody comes here from another one. */
export function ScreenHeading({ children }: { readonly children: ReactNode }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (hasMoved) heading.current?.focus();
  }, []);
  return (
    <h1 ref={heading} tabIndex={-1}>
      {children}
    </h1>
  );
}
