import { ROLES } from "../../../core/log/roles.ts";
import { day, number, type Table, text, word, words, yesOrNo } from "../columns.ts";

export const SKILLS = ["lead", "clean", "image", "box", "write"] as const;
export const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;

const WEEKDAY_ALIASES = {
  monday: "Mon",
  tuesday: "Tue",
  tues: "Tue",
  wednesday: "Wed",
  thursday: "Thu",
  thurs: "Thu",
  friday: "Fri",
  saturday: "Sat",
  sunday: "Sun",
  mon_thu: "Mon|Tue|Wed|Thu",
  mon_fri: "Mon|Tue|Wed|Thu|Fri",
  mon_sat: "Mon|Tue|Wed|Thu|Fri|Sat",
  sun_thu: "Sun|Mon|Tue|Wed|Thu",
};

const columns = {
  person: text({ required: true, help: "Short code used on papers.", examples: ["AN", "BO"] }),
  name: text({ required: true, help: "Name as it stands on the day sheet.", examples: ["Ana", "Bo"] }),
  role: word({
    required: true,
    allowed: ROLES,
    help: "What the person is here for.",
    examples: ["cleaner", "photographer"],
  }),
  skills: words({
    required: false,
    allowed: SKILLS,
    help: "What the person can do.",
    fallback: "as the role says",
    examples: ["clean|box|write", "image|box"],
  }),
  mould_work: yesOrNo({
    required: true,
    isPrivate: true,
    help: "Whether mould work may be given: yes or no, never why.",
    examples: ["yes", "no"],
  }),
  workdays: words({
    required: false,
    allowed: WEEKDAYS,
    aliases: WEEKDAY_ALIASES,
    help: "Days of the week the person works.",
    fallback: "Mon to Fri",
    examples: ["Mon|Tue|Wed|Thu|Fri", ""],
  }),
  hours: number({
    required: false,
    min: 0.25,
    max: 24,
    unit: "h",
    help: "Hours a day.",
    fallback: "7",
    examples: ["7", "7"],
  }),
  from: day({ required: false, help: "First day here.", examples: ["", ""] }),
  until: day({ required: false, help: "Last day here.", examples: ["", ""] }),
};

export const peopleTable: Table<typeof columns> = {
  name: "people",
  title: "People",
  help: "Who works, and when. Nothing here says why a person is not to do mould work.",
  columns,
  key: ["person"],
  links: {},
  mostRows: 2_000,
  aboutPeople: true,
};
