/** Words of the label on a box. */
export const BOX_LABEL = {
  kind: "Box label",
  box: "Box",
  shelf: "Shelf",
  boxedOn: "Boxed on",
  boxedThenLook: "Boxed on (look again after 14 and 30 days)",
  open: "Open only by",
  anyone: "whoever washed and dried their hands",
  mouldOnly: "a person on mould work, protected, in the dirty zone",
  advised: "a person told by the lead, protected",
  own: "A box of its own: put nothing else in",
  two: "Two people carry it",
  lookAgain: "Look again",
  more: (count: number): string => `and ${count} more`,
} as const;

/** From this mass on two people carry. Common practice, no source; follow local rules for lifting. */
export const TWO_CARRY_KG = 10;
