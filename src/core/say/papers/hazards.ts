/** What a label warns of, for one condition: in words, by ISO 7010 sign and GHS pictogram. */
export interface HazardWords {
  readonly holds: string;
  readonly signs: readonly string[];
  /** The work on the item ends it: dry growth cleaned off, droppings removed. Others stay on the item for good. */
  readonly endsWithCleaning: boolean;
}

/** Worst first. ISO 7010 codes as in common lists; GHS codes of arsenic and mercury matter, lead compounds and asbestos from memory. */
export const HAZARDS: Readonly<Record<string, HazardWords>> = {
  nitrate_advanced: {
    holds: "decaying cellulose nitrate film: burns without air, gives off poisonous gas",
    signs: ["W021", "P003", "P002", "P010", "GHS02"],
    endsWithCleaning: false,
  },
  nitrate_suspected: {
    holds: "cellulose nitrate film: burns fiercely",
    signs: ["W021", "P003", "P002", "GHS02"],
    endsWithCleaning: false,
  },
  pesticide_suspected: {
    holds: "poison against insects: arsenic, mercury salts, DDT, or powder with asbestos",
    signs: ["W016", "M017", "M009", "P010", "GHS06", "GHS08"],
    endsWithCleaning: false,
  },
  arsenic_suspected: {
    holds: "arsenic green",
    signs: ["W016", "M009", "P010", "GHS06", "GHS08"],
    endsWithCleaning: false,
  },
  lead_suspected: { holds: "lead", signs: ["W016", "M009", "GHS08"], endsWithCleaning: false },
  guano_contaminated: {
    holds: "bat or bird droppings: germs and fungi",
    signs: ["W009", "M017", "M009", "P010"],
    endsWithCleaning: true,
  },
  rodent_contaminated: {
    holds: "rodent droppings: germs",
    signs: ["W009", "M017", "M009", "P010"],
    endsWithCleaning: true,
  },
  mould_active: { holds: "living mould", signs: ["W009", "M017", "M009"], endsWithCleaning: true },
  mould_suspected: { holds: "mould", signs: ["W009", "M017", "M009"], endsWithCleaning: true },
  mould_dormant: { holds: "dormant mould", signs: ["W009", "M017", "M009"], endsWithCleaning: true },
  flood_dirt: { holds: "flood dirt: sewage, germs", signs: ["W009", "M009"], endsWithCleaning: true },
  broken_glass: { holds: "broken glass", signs: ["W022", "M009"], endsWithCleaning: false },
};

/** Words of the hazard label. */
export const HAZARD_LABEL = {
  kind: "Hazard label",
  ask: "Ask before opening",
  contact: "Ask the lead",
  contactAdviser: "Ask the lead, who asks",
  may: "May hold",
  holds: "Holds",
  labelled: "Labelled",
} as const;
