import { comparable } from "./words.ts";

/** Beginnings of words that tell of health, in some languages; from memory. Tables about people only, where a false alarm costs little. */
const TELLING =
  /(?:^|_)(?:ill|sick|diseas|diagnos|health|medic|condition|pregnan|allerg|asthm|disab|doctor|hospital|surger|immun|cancer|chemo|flu|fever|injur|symptom|lung|cough|rash|skin_|infect|covid|tubercul|diabet|transplant|steroid|therap|treatment|mental|depress|reason|cause|why|because|grund|krank|gesund|schwanger|arzt|attest|raison|motif|malad|sant|enceinte|razon|razón|motivo|enferm|salud|embaraz|doen|saúde|saude|grávid|gravid|ziek|gezond|zwanger|sakit|alasan|hamil)/u;

/** Whether a heading or entry may tell why a person is not to do mould work. */
export const mayTellOfHealth = (text: string): boolean => TELLING.test(comparable(text));
