import { type ReactNode, useEffect, useRef } from "react";
import "./screen-title.css";

/** The heading of a screen within a room. It takes the focus when the control that led here is gone, so that nobody is left nowhere. */
export function ScreenTitle({ children }: { readonly children: ReactNode }) {
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (document.activeElement === document.body) title.current?.focus();
  }, []);
  return (
    <h1 ref={title} className="screen-title" tabIndex={-1}>
      {children}
    </h1>
  );
}
