/** Beginnings of words that tell of a person's health, in English, German, French, Spanish, Portuguese, Dutch and Indonesian, without accents;
 *  from memory. They begin few other words, names of people among them. */
const BEGINNINGS = `
  allerg alerg asthm astma asmatic arthrit artrit autoimmun bronch chemothera chimioth quimioter chirurg cirugi cirurgi clinic covid
  depresi depressi dermatit diabet diagnos dialys disabilit disabled discapac eczem ekzem embaraz emphysem enceinte enferm epilep
  gesundheit gravid handicap gehandic schwerbehind heuschnupf hepatit hospitalis hospitaliz hospitaler
  immun immuun imun inmun inhalador inalador inhalateur inhalator inhaler insulin
  kehamil kesehat krankenh krankensc krankenk krankg krankh krankm krankschr leukaem leukam leukem leucem lymphom
  malad malaria paludis dengue maternit maternid mutterschaft mutterschutz medicament medikament medicat menopaus menstru migrain migrane
  enxaqueca minusval oncolog onkolog pacemaker pneumon poumon pregnan psoria psychi psycho psicol psiqui pulmon radiother
  schwanger steroid strahlenther attest therap terapi trasplant transplant tubercul tuberk tumor tumour vaccin vacunad vacina vakzin geimpft
  wheelchair zuckerkrank zwanger ziekenh ziekm ziekt adoec doenca doente saude salud`;
/** Whole words that do; as beginnings they would stop "illuminated" and "fluff". */
const WHOLE = `
  ill illness illnesses sick sickness sickly unwell pregnant miscarriage midwife breastfeeding nursing
  doctor doctors doctora docteur dokter huisarts medecin medico physician arzt arztin hospital hospitals hopital klinik clinique surgery surgeon
  cancer cancers cancerous kanker krebs chemo hiv sida copd
  flu influenza grippe griep gripe fever fevers feverish fieber fievre fiebre febre koorts demam
  injury injured injuries symptom symptoms symptome sintoma sintomas lung lungs cough coughs coughing husten toux tosse hoest batuk rash
  health healthy medical medication medicine medicines krank gesund sante ziek gezond sakit penyakit hamil gestante grossesse alergi asma
  kidney burnout ptsd anxiety`;
/** In tables about people alone, where a false alarm costs little: also beginnings that of an item mean something else, and words for why. */
const OF_PEOPLE = `
  behindert cancer cause because chemo condition cough disab diseas doctor doen fever flu grund health hamil hospital ill immun infect injur
  krank gesund arzt lung medic mental motif motivo alasan raison rash razon reason sakit sant sick surger symptom treatment why ziek gezond`;
/** Whole words that are names of people too, where they begin with a capital letter. */
const ALSO_NAMES =
  "ill sick doctor arzt rash fever lung krebs cough asma sante krank medico surgeon nursing sida";

const listed = (words: string): readonly string[] => words.trim().split(/\s+/);
/** Beginnings by their first two letters, so that a long text is gone through quickly. */
function filed(words: string): ReadonlyMap<string, readonly string[]> {
  const byTwo = new Map<string, string[]>();
  for (const each of listed(words))
    byTwo.set(each.slice(0, 2), [...(byTwo.get(each.slice(0, 2)) ?? []), each]);
  return byTwo;
}
const beginnings = filed(BEGINNINGS);
const ofPeople = filed(OF_PEOPLE);
const whole: ReadonlySet<string> = new Set(listed(WHOLE));
const alsoNames: ReadonlySet<string> = new Set(listed(ALSO_NAMES));

/** Accents, and soft hyphens and joiners as they come along in text copied from elsewhere. */
const PASSED_OVER = /[\p{M}\p{Cf}]/gu;

const INNER_CAPITAL = /(?<=\p{Ll})(?=\p{Lu})/u;
const hasInnerCapital = (word: string): boolean => word.slice(1) !== word.slice(1).toLowerCase();

/** The words as they stand, without accents; those written together with capitals between, as names of fields are, also one by one. */
function wordsOf(text: string): readonly string[] {
  const words =
    text
      .normalize("NFKD")
      .replace(PASSED_OVER, "")
      .match(/\p{L}+/gu) ?? [];
  return words.flatMap((word) => (hasInnerCapital(word) ? [word, ...word.split(INNER_CAPITAL)] : word));
}

const beginsAs = (starts: ReadonlyMap<string, readonly string[]>, word: string): boolean =>
  starts.get(word.slice(0, 2))?.some((each) => word.startsWith(each)) ?? false;
const tells = (word: string): boolean => whole.has(word) || beginsAs(beginnings, word);

/** The words of a free text that may tell of somebody's health. Not of a title: papers may speak of illness, notes about the work need not. */
export const healthWords = (text: string): string[] =>
  wordsOf(text)
    .map((word) => word.toLowerCase())
    .filter(tells);

/** The same for a person's name, which may well be, begin or end like an illness. */
export const healthWordsInName = (name: string): string[] =>
  wordsOf(name).flatMap((written) => {
    const word = written.toLowerCase();
    return tells(word) && !(alsoNames.has(word) && word[0] !== written[0]) ? [word] : [];
  });

/** The same for a heading or an entry of a table about people, where a word for why is one too many. */
export const healthWordsOfPeople = (text: string): string[] =>
  wordsOf(text)
    .map((word) => word.toLowerCase())
    .filter((word) => word === "skin" || tells(word) || beginsAs(ofPeople, word));
