import { useEffect } from "react";
import { post } from "../log/server-line.ts";

/** Whoever looks at what could be supposed will soon ask: the laptop works the plan as it is out meanwhile. */
export function useWarmWhatIf(mayPlan: boolean): void {
  useEffect(() => {
    if (mayPlan) void post("api/what-if/warm", {});
  }, [mayPlan]);
}
