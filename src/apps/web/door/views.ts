import { doorItem } from "./item-view.ts";
import { doorList } from "./list-view.ts";
import { listingWords } from "./listing-view.ts";
import { tagsView } from "./tags-view.ts";

export const doorViews = { doorItem, doorList, listingWords, doorTags: tagsView } as const;
