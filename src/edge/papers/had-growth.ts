import type { ItemCare } from "../../core/care/item-care.ts";

const GREW = ["mould_active", "mould_dormant", "mould_suspected", "insect_active", "insect_uncertain"];

/** Whether growth or insects are, or may be, on an item or one of its parts: it is looked at again after boxing. */
export const hadGrowth = ({ whole, parts }: ItemCare): boolean =>
  [whole, ...parts.map(({ care }) => care)].some(({ conditions, unsureConditions }) =>
    [...conditions, ...unsureConditions].some((each) => GREW.includes(each)),
  );
