import { drawPlanPicture } from "../../core/plan/picture/draw-plan-picture.ts";
import type { PlanPicture } from "../../core/plan/picture/plan-picture.ts";
import { picture as words } from "../../core/say/page.ts";
import { PICTURE_WORDS } from "../../core/say/plan-picture.ts";
import { printableIn } from "./printable.ts";
import { typeset } from "./typeset.ts";
import { ENGLISH } from "./words.ts";

/** The plan drawn, on one sheet turned on its side. */
export const planPicturePaper = (
  picture: PlanPicture,
  said: { readonly campaign: string; readonly day: string },
  sheet: "A4" | "Letter",
): Promise<Uint8Array> =>
  typeset("plan-picture", {
    sheet,
    language: "en",
    words: ENGLISH,
    signs: {},
    codes: [],
    views: printableIn([{ ...said, title: words.heading, alternative: PICTURE_WORDS.alternative(picture) }]),
    picture: drawPlanPicture(picture, PICTURE_WORDS),
  });
