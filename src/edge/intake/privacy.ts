import { healthWordsOfPeople } from "../../core/log/health-words.ts";

/** Whether a heading or entry may tell why a person is not to do mould work. */
export const mayTellOfHealth = (text: string): boolean => healthWordsOfPeople(text).length > 0;
