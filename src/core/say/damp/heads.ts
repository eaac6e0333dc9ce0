/* Heads and words that every damp command uses. */

export const DAMP_HEADS = { todo: "Do now", figures: "Figures", cautions: "Mind" } as const;
export const LOCAL_RULES = "Follow local rules and licensed practice.";
