/** A plan that breaks a limit is a fault of ours, and is never shown as good. */
export class BrokenPlan extends Error {
  override readonly name = "BrokenPlan";
}
