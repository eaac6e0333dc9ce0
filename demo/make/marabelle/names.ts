/** What stood before the camera, and what the paper wrote about, in Lissabwe. All invented. */
export const SITTINGS = [
  "two sisters with fans",
  "a ferryman in his best coat",
  "a wedding party on the steps",
  "a school class of nineteen",
  "a baker and his oven boys",
  "a nurse with a bicycle",
  "a family of seven and a goat",
  "the river band with drums",
  "a market woman with scales",
  "a boxer after the match",
  "a clerk at his desk",
  "three cousins in one chair",
  "a bride before the painted garden",
  "a child with a toy steamer",
] as const;

export const SCENES = [
  "the swing bridge under repair",
  "market day at the landing",
  "the flood gauge",
  "a paddle steamer at low water",
  "the brick kilns",
  "the new water tower",
  "cotton bales on the quay",
  "the tram depot fire, next morning",
  "lamp procession on the embankment",
  "the Gazette press room",
] as const;

export const ACCOUNTS = [
  "Studio day book",
  "Paper and ink account",
  "Subscribers of the Gazette",
  "Plates and chemicals bought",
  "Wages of the press room",
  "Advertisements, paid and owed",
  "Register of sittings",
] as const;
